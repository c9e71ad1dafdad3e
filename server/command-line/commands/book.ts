import path from "node:path";
import { planOf } from "../../plan/plan.ts";
import { photosOf, renderBook } from "../../reports/book.ts";
import type { BookPhoto } from "../../reports/book-photo.ts";
import { bookReport } from "../../reports/book-report.ts";
import { readPhotos } from "../../workspace/pictures/photos.ts";
import type { Command } from "../command.ts";
import { writeWhole } from "../write-whole.ts";

export const book: Command = {
  name: "book",
  operands: "[PATH]",
  summary: "the whole record as one page to keep and print: story, photos, schedules, torque sheet, costs",
  options: [
    { name: "out", value: "FILE", help: "write to this file, which must not be there yet" },
    { name: "overwrite", help: "with --out: write even if the file is there" },
  ],
  examples: [
    "cotter book --out record.html",
    "cotter book samples/roadster --out shrike.html --overwrite",
    "cotter book > record.html",
  ],
  run: async ({ operands, options, folder: from, out, openBuild }) => {
    const { build, folder } = await openBuild(operands[0]);
    const photos = await readPhotos(folder, photosOf(build));
    const page = renderBook(build, planOf(build), photos);
    const file = options.get("out");
    if (typeof file === "string")
      await writeWhole(path.resolve(from, file), page, options.has("overwrite"), file);
    for (const line of notShown(photos)) out.complain(`${line}\n`);
    if (options.has("json")) {
      const report = bookReport(build, photos, typeof file === "string" ? { file } : { page });
      out.write(`${JSON.stringify(report, undefined, 2)}\n`);
    } else if (typeof file !== "string") out.write(page);
    return 0;
  },
};

function notShown(photos: ReadonlyMap<string, BookPhoto>): readonly string[] {
  return [...photos].flatMap(([name, photo]) =>
    photo.is === "missing" ? [`cotter: the book is without ${name}: ${photo.why}`] : [],
  );
}

import { readFile } from "node:fs/promises";
import path from "node:path";
import { format as inLayout, layoutEdits } from "../../../grammar/printer.ts";
import { plain } from "../../reports/plain-text.ts";
import type { Command } from "../command.ts";
import { writeWhole } from "../write-whole.ts";

export const format: Command = {
  name: "format",
  operands: "[PATH]",
  summary: "the canonical layout: white space of records put in order, prose left alone",
  options: [{ name: "check", help: "change nothing; end with 1 where a file's layout differs" }],
  examples: ["cotter format", "cotter format samples/roadster --check"],
  run: async ({ operands, options, out, openFiles }) => {
    const { files, folder } = await openFiles(operands[0]);
    const checking = options.has("check");
    const differing = files.filter(({ document }) => layoutEdits(document).length > 0);
    for (const { path: name } of checking ? [] : differing) {
      const file = path.join(folder, name);
      await writeWhole(file, inLayout(await readFile(file, "utf8")), true);
    }
    const said = checking ? "is not in the canonical layout" : "put in order";
    for (const { path: name } of differing) out.write(`${plain(name)}: ${said}\n`);
    return checking && differing.length > 0 ? 1 : 0;
  },
};

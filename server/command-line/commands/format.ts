import { readFile } from "node:fs/promises";
import path from "node:path";
import { format as inLayout } from "../../../grammar/printer.ts";
import { plain } from "../../reports/plain-text.ts";
import type { Command } from "../command.ts";
import { writeWhole } from "../write-whole.ts";

const BYTE_ORDER_MARK = "\ufeff";

export const format: Command = {
  name: "format",
  operands: "[PATH]",
  summary: "the canonical layout: white space of records put in order, prose left alone",
  options: [{ name: "check", help: "change nothing; end with 1 where a file's layout differs" }],
  examples: ["cotter format", "cotter format samples/roadster --check"],
  run: async ({ operands, options, out, openBuild }) => {
    const { build, folder } = await openBuild(operands[0]);
    const checking = options.has("check");
    const differing: string[] = [];
    for (const { path: name } of build.files) {
      const file = path.join(folder, name);
      const text = await readFile(file, "utf8");
      const mark = text.startsWith(BYTE_ORDER_MARK) ? BYTE_ORDER_MARK : "";
      const formatted = mark + inLayout(text.slice(mark.length));
      if (formatted === text) continue;
      differing.push(name);
      if (!checking) await writeWhole(file, formatted, true);
    }
    const said = checking ? "is not in the canonical layout" : "put in order";
    for (const name of differing) out.write(`${plain(name)}: ${said}\n`);
    return checking && differing.length > 0 ? 1 : 0;
  },
};

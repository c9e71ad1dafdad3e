/** Where something new belongs in the log: today's day, a part beside those of its assembly. */
import type { BlockSite } from "../../../build/source.ts";
import { placeAt } from "../../../build/source.ts";
import type { TreeNode } from "../../../build/tree/node.ts";
import { below } from "../../../build/tree/node.ts";
import type { Log } from "../../../workspace/build-snapshot.ts";
import type { DayPlace, PartPlace, Spot } from "../../protocol.ts";
import type { ChosenBuild } from "./chosen-build.ts";

/** The day of today, or else the end of the newest day before it; of a log without days, the end of the file. */
export function dayPlace(chosen: ChosenBuild, log: Log | undefined): DayPlace | null {
  const { gathered } = chosen.build.standing;
  const { today } = chosen.build;
  const days = gathered.days
    .filter(({ date }) => date !== undefined && date <= today)
    .sort((a, b) => ((a.date ?? "") < (b.date ?? "") ? -1 : 1));
  const newest = days.at(-1);
  const end = newest === undefined ? endOfLog(chosen, log) : endOf(chosen, newest.site);
  if (end === undefined) return null;
  return {
    date: today,
    found: newest?.date === today ? chosen.spotOf(newest.header) : null,
    end,
  };
}

/** Beside the last part of the innermost assembly that is there, else at the end of the log. */
export function partPlace(chosen: ChosenBuild, path: string, log: Log | undefined): PartPlace | null {
  const { tree } = chosen.build.standing.gathered;
  const there = tree.at(path);
  const neighbour = neighbourOf(path, (around) => tree.at(around));
  const end = neighbour === undefined ? endOfLog(chosen, log) : endOf(chosen, neighbour);
  if (end === undefined) return null;
  const taken = there?.kind === "assembly" ? undefined : there?.header;
  return { taken: taken === undefined ? null : chosen.spotOf(taken), end };
}

function neighbourOf(path: string, at: (path: string) => TreeNode | undefined): BlockSite | undefined {
  const names = path.split(".");
  for (let length = names.length; length > 0; length -= 1) {
    const around = at(names.slice(0, length).join("."));
    if (around === undefined) continue;
    const blocks = [around, ...below(around)].flatMap((node) =>
      node.header === undefined || node.copyOf !== undefined ? [] : [node.header.site],
    );
    const last = blocks.at(-1);
    if (last !== undefined) return last;
  }
  return undefined;
}

function endOfLog(chosen: ChosenBuild, log: Log | undefined): Spot | undefined {
  const file = (log ?? chosen.snapshot.logs[0])?.file;
  const index = (file?.document.blocks.length ?? 0) - 1;
  const block = file?.document.blocks[index];
  if (file === undefined) return undefined;
  return block === undefined
    ? { uri: chosen.uriOf(file), line: 0, character: 0 }
    : endOf(chosen, { file, index, block });
}

/** Behind the last line that says something: comments after it may belong to what comes next. */
function endOf(chosen: ChosenBuild, site: BlockSite): Spot {
  const { items, text } = site.block;
  const last = items.findLast(({ kind }) => kind !== "blank" && kind !== "comment");
  const end = text.slice(0, last?.end ?? 0).trimEnd().length;
  return chosen.spotOf(placeAt(site, { start: end, end }));
}

/** The names that a thing had before: where a block of its name came as one that said the same went. */
import type { BlockNode } from "../../../grammar/syntax.ts";
import type { PlacedBlock, Step } from "./steps.ts";

/** The name now first, then those before it. */
export function namesThroughTime(ref: string, steps: readonly Step[]): readonly string[] {
  const names = [ref];
  for (const { gone, come } of [...steps].reverse()) {
    const name = names.at(-1) as string;
    const earlier = earlierName(name, gone, come);
    if (earlier !== undefined && !names.includes(earlier)) names.push(earlier);
  }
  return names;
}

/** Of the thing itself, else of the nearest assembly above it that was renamed. */
function earlierName(
  name: string,
  gone: readonly PlacedBlock[],
  come: readonly PlacedBlock[],
): string | undefined {
  if (gone.length === 0 || come.length === 0) return undefined;
  for (let branch = name; branch !== ""; branch = branch.slice(0, Math.max(0, branch.lastIndexOf(".")))) {
    const later = come.find(({ block }) => nameOf(block) === branch);
    if (later === undefined || gone.some(({ block }) => nameOf(block) === branch)) continue;
    const before = sameUnderAnotherName(later.block, gone, come);
    if (before !== undefined) return before + name.slice(branch.length);
  }
  return undefined;
}

/** By all that it says, else by its title. */
function sameUnderAnotherName(
  later: BlockNode,
  gone: readonly PlacedBlock[],
  come: readonly PlacedBlock[],
): string | undefined {
  const still = new Set(come.map(({ block }) => nameOf(block)));
  const candidates = gone
    .map(({ block }) => block)
    .filter((block) => block.header?.block === later.header?.block && !still.has(nameOf(block)));
  const same =
    candidates.find((block) => bodyOf(block) === bodyOf(later)) ??
    candidates.find((block) => titleOf(block) !== undefined && titleOf(block) === titleOf(later));
  return same && nameOf(same);
}

/** The path or name that a block defines. */
export function nameOf({ header }: BlockNode): string | undefined {
  const name = header?.values.get("name");
  return name?.kind === "word" ? name.text : undefined;
}

function titleOf({ header }: BlockNode): string | undefined {
  const title = header?.values.get("title");
  return title?.kind === "string" ? title.text : undefined;
}

function bodyOf(block: BlockNode): string {
  const [, behind = ""] = block.text.split(/(?<=^\S+\s+\S+)(?=\s|$)/);
  return behind.replace(/\s+/g, " ").trim();
}

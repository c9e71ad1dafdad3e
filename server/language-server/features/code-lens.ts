/** A line above each block that says how the thing stands: worked out when it comes into view. */
import type { CodeLens } from "vscode-languageserver";
import type { BlockWord } from "../../../grammar/syntax.ts";
import type { Build } from "../../build/build.ts";
import { recordOf } from "../../build/judgement.ts";
import { openItems } from "../../build/openness.ts";
import type { BlockSite } from "../../build/source.ts";
import { needsOf } from "../../plan/needs.ts";
import { nodeOfBlock } from "../names/meaning.ts";
import { rangeIn } from "../to-protocol.ts";
import type { FileView } from "../view.ts";
import { stateOf } from "../words/node-state.ts";

const WITH_STATE: ReadonlySet<BlockWord> = new Set([
  "vehicle",
  "assembly",
  "part",
  "joint",
  "system",
  "circuit",
  "hold",
]);

/** The places; `data` is the block to ask about. */
export function codeLenses({ document, log }: FileView): CodeLens[] {
  return document.blocks.flatMap(({ header }, index) =>
    header?.block !== undefined && WITH_STATE.has(header.block) && !header.broken
      ? [{ range: rangeIn(document, index, header.word), data: { uri: log.path, block: index } }]
      : [],
  );
}

/** The words above a block; undefined where the block is not there any more. */
export function lensWords({ build, sites }: FileView, block: number): string | undefined {
  const site = sites.find(({ index }) => index === block);
  return site === undefined ? undefined : words(build, site);
}

function words(build: Build, site: BlockSite): string | undefined {
  const { header } = site.block;
  if (header?.block === "hold") {
    const name = header.values.get("name");
    return name?.kind === "word" ? holdWords(build, name.text) : undefined;
  }
  const node = nodeOfBlock(build, site);
  if (node === undefined) return undefined;
  if (node.kind !== "vehicle") return stateOf(build, node);
  const toOrder = needsOf(build).filter((need) => need.toOrder > 0).length;
  return [stateOf(build, node), `${toOrder} to order`].filter((text) => text !== "").join(", ");
}

/** `released on 2026-10-08`; `3 open, planned for 2026-11-21`. */
function holdWords({ standing }: Build, name: string): string | undefined {
  const definition = standing.names.named("hold", name);
  const hold = definition && standing.holds.get(definition);
  if (definition === undefined || hold === undefined) return undefined;
  if (hold.released !== undefined && hold.lapsed === undefined) return `released on ${hold.released.date}`;
  const open = openItems(standing, definition).length;
  const planned = recordOf(definition, "planned")?.date;
  const words = open === 0 ? "nothing open" : `${open} open`;
  return planned === undefined ? words : `${words}, planned for ${planned}`;
}

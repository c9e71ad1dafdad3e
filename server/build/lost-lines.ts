/**
 * Lines of the log that could not be read, or not in full: what they would have said is unknown, so the hold points that
 * they may concern stay open.
 */
import type { BlockNode, ItemNode, ReferenceNode, ReferenceSegment, Span } from "../../grammar/syntax.ts";
import type { Gathered, NamedDefinition } from "./definitions.ts";
import type { FindingCode } from "./finding.ts";
import { inOneList } from "./list-under.ts";
import { lowerBlock } from "./lowering/block.ts";
import type { Names } from "./names.ts";
import { isSame, madeOnce, Remembered } from "./remembered.ts";
import type { BlockSite, Place, SourceFile } from "./source.ts";
import { OfBlocks, placeAt, sitesIn, textAt } from "./source.ts";
import type { TreeKind, TreeNode } from "./tree/node.ts";
import type { Written } from "./tree/written.ts";

export interface LostLine {
  readonly place: Place;
  readonly text: string;
  /** What it is about; none of a supplier or job, undefined where that cannot be known. */
  readonly nodes: ReadonlySet<TreeNode> | undefined;
  /** The hold point in whose block it stands. */
  readonly hold: NamedDefinition | undefined;
}

export interface LostLines {
  /** Of everything but dated days: unread from the start. */
  readonly definitions: readonly LostLine[];
  /** Of a dated day. */
  readonly inDay: (day: BlockSite) => readonly LostLine[];
}

/** Of the blocks of one file. */
interface LostInFile {
  readonly definitions: readonly LostLine[];
  readonly days: ReadonlyMap<BlockSite, readonly LostLine[]>;
}

const NONE: readonly LostLine[] = [];

/** Findings about references that lost what they should have meant. */
const LOST_REFERENCES: ReadonlySet<FindingCode> = new Set([
  "unknown-reference",
  "ambiguous-reference",
  "reference-kind",
]);

/** Faults that lose nothing of what the line says. */
const HARMLESS: ReadonlySet<FindingCode> = new Set(["waiver-without-reason", "reserved-name"]);

/** @param files in the order of definition */
export function lostLinesOf(files: readonly SourceFile[], gathered: Gathered, names: Names): LostLines {
  const { written } = gathered;
  const subjects = subjectsOf(gathered, names);
  return {
    definitions: subjects.lostInDefinitions(files, written),
    inDay: (day) => subjects.lostInFile(day.file, written).days.get(day) ?? NONE,
  };
}

function isDatedDay({ block }: BlockSite): boolean {
  const lowered = lowerBlock(block);
  return lowered.is === "day" && lowered.date !== undefined;
}

const remembered = new WeakMap<Names, Subjects>();

function subjectsOf(gathered: Gathered, names: Names): Subjects {
  return madeOnce(remembered, names, () => new Subjects(gathered, names));
}

/** The lines of a block in which something could not be read; all of it where the block itself means nothing. */
function linesLostIn({ block }: BlockSite, unresolved: readonly Span[]): Span[] {
  const lowered = lowerBlock(block);
  const unread = lowered.faults.filter(({ code }) => !HARMLESS.has(code));
  const spans: readonly Span[] = [...unread, ...unresolved];
  const undated = lowered.is === "day" && lowered.date === undefined;
  // The hours of a day say nothing about the vehicle.
  const inHeader = lowered.is !== "day";
  if (block.header !== undefined && (lowered.is === "nothing" || undated)) return [contentOf(block.header)];
  if (spans.length === 0) return [];
  return extentsIn(block)
    .filter(({ isHeader }) => inHeader || !isHeader)
    .filter((extent) => spans.some((span) => holds(extent, span)))
    .map(({ content }) => content);
}

/** Where a line that can be lost stands, and what of it is its content. */
export interface Extent extends Span {
  readonly isHeader: boolean;
  readonly content: Span;
}

const extents = new WeakMap<BlockNode, readonly Extent[]>();

/** Kept, so that the lines of a block are not read again for each name that comes or goes elsewhere. */
export function extentsIn(block: BlockNode): readonly Extent[] {
  return madeOnce(extents, block, () =>
    block.items
      .filter(({ kind }) => kind === "record" || kind === "stray" || kind === "header")
      .map((item) => {
        const { kind, start, end } = item;
        return { start, end, isHeader: kind === "header", content: contentOf(item) };
      }),
  );
}

function holds(extent: Extent, { start }: Span): boolean {
  return extent.start <= start && start < extent.end;
}

function contentOf(item: ItemNode): Span {
  if (item.kind === "record") return { start: item.word.start, end: item.contentEnd };
  if (item.kind === "header") return { start: item.word.start, end: item.word.end };
  return { start: item.start, end: item.end };
}

/** Whether a place has the text of a line that was lost at the same place of the block as it was before. */
function isAt(place: Place, line: LostLine): boolean {
  return (
    line.place.start === place.start && line.place.end === place.end && line.text === textAt(place).trim()
  );
}

/** The lost lines of blocks that define, by file and together. */
interface InDefinitions {
  readonly lists: readonly (readonly LostLine[])[];
  readonly together: readonly LostLine[];
}

/** Which lines are lost, and whom each concerns. */
class Subjects {
  private readonly names: Names;
  private readonly nodes = new Map<BlockSite, Set<TreeNode>>();
  private readonly named = new Map<BlockSite, NamedDefinition>();
  private readonly lost = new OfBlocks<readonly LostLine[]>();
  private readonly latest = new WeakMap<BlockSite, readonly LostLine[]>();
  private inDefinitions: InDefinitions = { lists: [], together: NONE };
  private readonly lostInFiles = new Remembered<SourceFile, LostInFile>();

  constructor(gathered: Gathered, names: Names) {
    this.names = names;
    for (const node of gathered.tree.nodes()) {
      if (node.kind === "vehicle") continue;
      if (node.header !== undefined) this.note(node.header.site, node);
      // A line that could not be read in a block that was copied is unread of the copy too.
      for (const site of node.sources) this.note(site, node);
    }
    for (const ofKind of gathered.named.values())
      for (const definition of ofKind.values()) this.named.set(definition.header.site, definition);
  }

  /** The same list as long as every file has the same. */
  lostInDefinitions(files: readonly SourceFile[], written: Written): readonly LostLine[] {
    const lists = files.map((file) => this.lostInFile(file, written).definitions);
    if (!isSame(this.inDefinitions.lists, lists)) this.inDefinitions = { lists, together: inOneList(lists) };
    return this.inDefinitions.together;
  }

  lostInFile(file: SourceFile, written: Written): LostInFile {
    return this.lostInFiles.of(file, [written.naming], () => {
      const definitions: LostLine[] = [];
      const days = new Map<BlockSite, readonly LostLine[]>();
      const sites = sitesIn(file);
      const ofBlocks = this.lost.of(file, [written.naming], (each) => this.lostIn(each, written));
      for (let index = 0; index < sites.length; index++) {
        const lost = ofBlocks[index] as readonly LostLine[];
        if (lost.length === 0) continue;
        const site = sites[index] as BlockSite;
        if (isDatedDay(site)) days.set(site, lost);
        else definitions.push(...lost);
      }
      return { definitions: definitions.length === 0 ? NONE : definitions, days };
    });
  }

  /**
   * The lines of a block that were lost, in the order of the text: the same list while it says the same, and the same lines. The
   * header of an undated day stands for all that is below it, and so it is another one with each key.
   */
  private lostIn(site: BlockSite, written: Written): readonly LostLine[] {
    const unresolved = this.names.findingsIn(site, written).filter(({ code }) => LOST_REFERENCES.has(code));
    const lines = linesLostIn(
      site,
      unresolved.map(({ place }) => place),
    );
    if (lines.length === 0) return NONE;
    const places = lines.map((line) => placeAt(site, line));
    const inDay = lowerBlock(site.block).is === "day";
    if (inDay && !isDatedDay(site)) return places.map((place) => this.about(place, inDay));
    const known = this.latest.get(site) ?? NONE;
    const lost = places.map((place) => known.find((line) => isAt(place, line)) ?? this.about(place, inDay));
    if (isSame(lost, known)) return known;
    this.latest.set(site, lost);
    return lost;
  }

  private about(place: Place, inDay: boolean): LostLine {
    const text = textAt(place).trim();
    const known = { place, text };
    if (inDay) return { ...known, nodes: this.meantBy(text), hold: undefined };
    const nodes = this.nodes.get(place.site);
    if (nodes !== undefined) return { ...known, nodes, hold: undefined };
    const named = this.named.get(place.site);
    if (named === undefined || named.kind === "gauge") return { ...known, nodes: undefined, hold: undefined };
    return { ...known, nodes: new Set(), hold: named.kind === "hold" ? named : undefined };
  }

  private note(site: BlockSite, node: TreeNode): void {
    const known = this.nodes.get(site);
    if (known === undefined) this.nodes.set(site, new Set([node]));
    else known.add(node);
  }

  /** What the references behind the first word mean; undefined unless every one of them means something. */
  private meantBy(text: string): ReadonlySet<TreeNode> | undefined {
    const list = LIST.exec(text)?.[1];
    const found = new Set<TreeNode>();
    for (const part of list?.split(OUTSIDE_BRACES) ?? []) {
      const targets = this.names.targets(referenceOf(part.trim()), TREE_KINDS);
      if (targets.length === 0) return undefined;
      for (const { node } of targets) found.add(node);
    }
    return found.size === 0 ? undefined : found;
  }
}

const TREE_KINDS: readonly TreeKind[] = ["assembly", "part", "joint", "system", "circuit"];
const REFERENCE = String.raw`[A-Za-z]\w*(?:\.(?:\w+|\*|\{[^{}]*\}))*`;
/** The list of references behind `word:`, a count before the first left out. */
const LIST = new RegExp(String.raw`^[A-Za-z_]+ ?: *(?:\d+ *[x×] *)?(${REFERENCE}(?: *, *${REFERENCE})*)`);
const OUTSIDE_BRACES = /,(?![^{]*\})/;

function referenceOf(text: string): ReferenceNode {
  const segments = text.split(/\.(?![^{]*\})/).map((segment): ReferenceSegment => {
    if (segment === "*") return { is: "every" };
    if (!segment.startsWith("{")) return { is: "name", text: segment };
    const options = segment.slice(1, -1).split(",");
    return { is: "choice", options: options.map((option) => option.trim()) };
  });
  return { kind: "reference", text, segments, start: 0, end: text.length };
}

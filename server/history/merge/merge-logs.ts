/**
 * Two versions of a log made from one, brought together block by block, so that two days written on two branches are
 * both kept, in the order of their dates. Git's own merge takes both for changes of one place, and its union mixes the
 * lines of blocks that were both changed. What both sides changed in one block is left to `inBlock`.
 */
import type { Piece } from "./pieces.ts";
import { piecesOf } from "./pieces.ts";

export interface MergedLog {
  readonly text: string;
  /** Blocks that a person has to look at: both versions stand in the text between markers. */
  readonly conflicts: number;
}

/** What `cotter merge-file` did, as a report object. */
export function mergeReport({ conflicts }: MergedLog) {
  return { schema: "cotter/merge-file/1", conflicts } as const;
}

/** Three versions of a log, or of one block; `base` is empty where both sides wrote the block. */
export interface Versions {
  readonly base: string;
  readonly ours: string;
  readonly theirs: string;
}

/** Brings the lines of one block together; where that is not possible both stand between markers. */
export type MergeInBlock = (
  versions: Versions,
) => Promise<{ readonly text: string; readonly conflict: boolean }>;

export async function mergeLogs(versions: Versions, inBlock: MergeInBlock): Promise<MergedLog> {
  const [base, ours, theirs] = [versions.base, versions.ours, versions.theirs].map((text) =>
    piecesOf(plain(text)),
  ) as [readonly Piece[], readonly Piece[], readonly Piece[]];
  const merge = new Merge(base, ours, theirs, inBlock);
  await merge.run();
  return { text: inStyleOf(versions.ours, merge.text()), conflicts: merge.conflicts };
}

class Merge {
  conflicts = 0;
  private readonly base: ReadonlyMap<string, Piece>;
  private readonly ours: ReadonlyMap<string, Piece>;
  private readonly theirs: ReadonlyMap<string, Piece>;
  private readonly inBlock: MergeInBlock;
  /** What has been decided, by key; pieces that go are not in it. */
  private readonly merged = new Map<string, Piece>();
  /** Blocks of theirs for a day that ours has written of too. */
  private readonly besides = new Map<string, Piece>();

  constructor(
    base: readonly Piece[],
    ours: readonly Piece[],
    theirs: readonly Piece[],
    inBlock: MergeInBlock,
  ) {
    const byKey = (pieces: readonly Piece[]) => new Map(pieces.map((piece) => [piece.key, piece]));
    this.base = byKey(base);
    this.ours = byKey(ours);
    this.theirs = byKey(theirs);
    this.inBlock = inBlock;
  }

  async run(): Promise<void> {
    for (const key of new Set([...this.ours.keys(), ...this.theirs.keys()])) await this.decide(key);
  }

  /** The pieces in order, with a blank line where none was between them before. */
  text(): string {
    const pieces = this.order();
    return pieces
      .map(({ text, gap }, index) => (index === pieces.length - 1 ? `${text}\n` : `${text}\n${gap ?? "\n"}`))
      .join("");
  }

  /** What only one side changed is taken from that side, its removal included. */
  private async decide(key: string): Promise<void> {
    const [base, ours, theirs] = [this.base.get(key), this.ours.get(key), this.theirs.get(key)];
    if (ours?.text === theirs?.text || theirs?.text === base?.text) this.take(ours, theirs);
    else if (ours?.text === base?.text) this.take(theirs, ours);
    else if (base === undefined && ours?.date !== undefined && theirs !== undefined) {
      // Two people wrote of one day, each in a block of their own: both are true.
      this.take(ours, theirs);
      this.besides.set(key, { ...theirs, key: `${key} besides` });
    } else await this.mergeBlock({ base, ours, theirs });
  }

  private async mergeBlock({
    base,
    ours,
    theirs,
  }: Readonly<Record<keyof Versions, Piece | undefined>>): Promise<void> {
    const { text, conflict } = await this.inBlock({
      base: base?.text ?? "",
      ours: ours?.text ?? "",
      theirs: theirs?.text ?? "",
    });
    if (conflict) this.conflicts++;
    const piece = ours ?? theirs;
    if (piece !== undefined && text !== "") this.take({ ...piece, text }, theirs);
  }

  /** @param other the same piece on the other side, which knows what stands behind it where this one was the last */
  private take(piece: Piece | undefined, other: Piece | undefined): void {
    if (piece !== undefined) this.merged.set(piece.key, { ...piece, gap: piece.gap ?? other?.gap });
  }

  /** The order of our side, what theirs adds put in. */
  private order(): readonly Piece[] {
    const order = [...this.ours.keys()].flatMap((key) => this.merged.get(key) ?? []);
    const newestFirst = isFalling(order.flatMap(({ date }) => date ?? []));
    let behind: Piece | undefined;
    for (const key of this.theirs.keys()) {
      const piece = this.merged.get(key);
      if (piece === undefined) continue;
      if (!order.includes(piece)) order.splice(placeFor(piece, behind, order, newestFirst), 0, piece);
      const beside = this.besides.get(key);
      if (beside !== undefined) order.splice(order.indexOf(piece) + 1, 0, beside);
      behind = piece;
    }
    return order;
  }
}

/** Days by their date, everything else behind what it stands behind on its own side. */
function placeFor(
  { date }: Piece,
  behind: Piece | undefined,
  order: readonly Piece[],
  newestFirst: boolean,
): number {
  const isLater = (other: Piece) =>
    date !== undefined && other.date !== undefined && (newestFirst ? other.date < date : other.date > date);
  const later = order.findIndex(isLater);
  if (later >= 0) return later;
  const last = date === undefined ? -1 : order.findLastIndex((other) => other.date !== undefined);
  if (last >= 0) return last + 1;
  return behind === undefined ? 0 : order.indexOf(behind) + 1;
}

/** Whether the newest day stands first. */
function isFalling(dates: readonly string[]): boolean {
  return dates.length > 1 && dates.every((date, index) => index === 0 || (dates[index - 1] ?? "") >= date);
}

function plain(text: string): string {
  return text.replace(/^\ufeff/, "").replaceAll("\r\n", "\n");
}

/** The line ends and the byte order mark of a text. */
function inStyleOf(model: string, text: string): string {
  const mark = model.startsWith("\ufeff") ? "\ufeff" : "";
  return mark + (model.includes("\r\n") ? text.replaceAll("\n", "\r\n") : text);
}

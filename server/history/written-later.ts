/** For hovers: whether a fact was written later than its day, and by whom. Git is asked once for each file and commit. */
import { Document } from "../../grammar/document.ts";
import type { IsoDate } from "../quantities/dates.ts";
import { daysBetween } from "../quantities/dates.ts";
import type { BlamedLine } from "./blame.ts";
import { blame } from "./blame.ts";
import { isGitFault } from "./git-fault.ts";
import { Repository } from "./repository.ts";

/** How a fact came to be written later than the day that it tells of. */
export interface WrittenLater {
  readonly written: string;
  readonly author: string;
  readonly commit: string;
  readonly daysLater: number;
}

/** Where a fact stands: its day and its line as written. */
export interface WrittenFact {
  /** Relative to the build's folder, with `/`. */
  readonly file: string;
  readonly day: IsoDate;
  readonly line: string;
}

type Writers = ReadonlyMap<string, BlamedLine>;

export class WrittenLaterLookup {
  private readonly folder: string;
  private readonly known = new Map<string, Promise<Writers>>();

  /** @param folder of a build on disk; to be made only where its folder is trusted, since git is started there */
  constructor(folder: string) {
    this.folder = folder;
  }

  /** Undefined of what was written on its day, is not committed, or stands in no repository. */
  async of({ file, day, line }: WrittenFact): Promise<WrittenLater | undefined> {
    const repository = await Repository.around(this.folder);
    if (isGitFault(repository)) return undefined;
    const head = await repository.commit("HEAD");
    if (isGitFault(head)) return undefined;
    const key = `${head.id} ${file}`;
    const writers = this.known.get(key) ?? writersOf(repository, file);
    this.keep(key, writers);
    const writer = (await writers).get(keyOf(day, line));
    if (writer === undefined) return undefined;
    const daysLater = daysBetween(day, writer.day as IsoDate);
    return daysLater > 0
      ? { written: writer.day, author: writer.author, commit: writer.commit, daysLater }
      : undefined;
  }

  /** What is known of a file at an earlier commit is of no more use. */
  private keep(key: string, writers: Promise<Writers>): void {
    const file = key.slice(key.indexOf(" "));
    for (const old of this.known.keys()) if (old !== key && old.endsWith(file)) this.known.delete(old);
    this.known.set(key, writers);
  }
}

/** The line of a fact, without its white space, is known by its day: positions move with every edit. */
function keyOf(day: string, line: string): string {
  return `${day} ${line.replace(/\s+/g, " ").trim()}`;
}

async function writersOf({ root, prefix }: Repository, file: string): Promise<Writers> {
  const lines = await blame(root, prefix + file);
  if (isGitFault(lines)) return new Map();
  const { blocks, lines: firstLines } = Document.read(lines.map(({ text }) => text).join("\n"));
  const writers = new Map<string, BlamedLine>();
  for (const [index, { header, lineStarts }] of blocks.entries()) {
    const date = header?.values.get("date");
    if (date?.kind !== "date") continue;
    const first = firstLines[index] ?? 0;
    for (const line of lines.slice(first + 1, first + lineStarts.length))
      if (!writers.has(keyOf(date.text, line.text))) writers.set(keyOf(date.text, line.text), line);
  }
  return writers;
}

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

const NOBODY: Writers = new Map();

export class WrittenLaterLookup {
  private readonly folder: string;
  /** By commit and file. */
  private readonly asked = new Map<string, Promise<Writers>>();
  /** By file. */
  private readonly newest = new Map<string, Writers>();

  /** @param folder of a build on disk; to be made only where its folder is trusted, since git is started there */
  constructor(folder: string) {
    this.folder = folder;
  }

  /** Undefined of what was written on its day, is not committed, or stands in no repository. */
  async of(fact: WrittenFact): Promise<WrittenLater | undefined> {
    await this.lookAt(fact.file);
    return this.known(fact);
  }

  /** The same without asking git: as it was when the file was looked at last; undefined of a file that never was. */
  known({ file, day, line }: WrittenFact): WrittenLater | undefined {
    const writer = this.newest.get(file)?.get(keyOf(day, line));
    if (writer === undefined) return undefined;
    const daysLater = daysBetween(day, writer.day as IsoDate);
    return daysLater > 0
      ? { written: writer.day, author: writer.author, commit: writer.commit, daysLater }
      : undefined;
  }

  /** Asks git who wrote the lines of a file, unless that is known of its last commit. */
  async lookAt(file: string): Promise<void> {
    this.newest.set(file, await this.writers(file));
  }

  private async writers(file: string): Promise<Writers> {
    const repository = await Repository.around(this.folder);
    if (isGitFault(repository)) return NOBODY;
    const head = await repository.commit("HEAD");
    if (isGitFault(head)) return NOBODY;
    const key = `${head.id} ${file}`;
    const writers = this.asked.get(key) ?? writersOf(repository, file);
    this.keep(key, writers);
    return await writers;
  }

  /** What is known of a file at an earlier commit is of no more use. */
  private keep(key: string, writers: Promise<Writers>): void {
    const file = key.slice(key.indexOf(" "));
    for (const old of this.asked.keys()) if (old !== key && old.endsWith(file)) this.asked.delete(old);
    this.asked.set(key, writers);
  }
}

/** The line of a fact, without its white space, is known by its day: positions move with every edit. */
function keyOf(day: string, line: string): string {
  return `${day} ${line.replace(/\s+/g, " ").trim()}`;
}

async function writersOf({ root, prefix }: Repository, file: string): Promise<Writers> {
  const lines = await blame(root, prefix + file);
  if (isGitFault(lines)) return NOBODY;
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

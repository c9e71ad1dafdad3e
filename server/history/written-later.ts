/** For hovers: whether a fact was written later than its day, and by whom. Git is asked once for each file and commit. */
import { Document } from "../../grammar/document.ts";
import type { IsoDate } from "../quantities/dates.ts";
import { daysBetween } from "../quantities/dates.ts";
import type { BlamedLine } from "./blame.ts";
import { blame } from "./blame.ts";
import type { GitFault } from "./git-fault.ts";
import { isGitFault } from "./git-fault.ts";
import { lastCommitAround } from "./repository.ts";

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

/** Where the record of a folder is simply not there: nothing is told of a fact, and nothing is wrong. */
const UNRECORDED: ReadonlySet<GitFault["fault"]> = new Set<GitFault["fault"]>([
  "no git",
  "no repository",
  "no commit",
]);

export class WrittenLaterLookup {
  private readonly folder: string;
  /** By file: what was known of it at which commit. */
  private readonly asked = new Map<string, { readonly commit: string; readonly writers: Promise<Answer> }>();
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

  /**
   * Asks git for the last commit, and who wrote the lines of a file unless that is known of that commit.
   * @returns why git could not answer, unless there is no record
   */
  async lookAt(file: string): Promise<GitFault | undefined> {
    const answer = await this.writers(file);
    this.newest.set(file, isGitFault(answer) ? NOBODY : answer);
    return isGitFault(answer) && !UNRECORDED.has(answer.fault) ? answer : undefined;
  }

  private async writers(file: string): Promise<Answer> {
    const place = await lastCommitAround(this.folder);
    if (isGitFault(place)) return place;
    const { root, prefix, head } = place;
    const known = this.asked.get(file);
    if (known?.commit === head) return await known.writers;
    const writers = writersOf(root, prefix + file);
    this.asked.set(file, { commit: head, writers });
    const answer = await writers;
    // What is at fault may be put right without a commit.
    if (isGitFault(answer)) this.asked.delete(file);
    return answer;
  }
}

type Answer = Writers | GitFault;

/** The line of a fact, without its white space, is known by its day: positions move with every edit. */
function keyOf(day: string, line: string): string {
  return `${day} ${line.replace(/\s+/g, " ").trim()}`;
}

async function writersOf(root: string, path: string): Promise<Answer> {
  const lines = await blame(root, path);
  if (isGitFault(lines)) return lines;
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

/** The commits of a build, parents first, each with the blocks that it took out and brought in. */
import type { BlockNode } from "../../../grammar/syntax.ts";
import type { Commit, CommitWithLogs } from "../commit.ts";
import type { GitFault } from "../git-fault.ts";
import { isGitFault } from "../git-fault.ts";
import type { Repository } from "../repository.ts";
import type { Files } from "./own-files.ts";
import { OwnFiles } from "./own-files.ts";
import type { Version } from "./versions.ts";
import { versionAfter } from "./versions.ts";

/** A block at a commit. */
export interface PlacedBlock {
  readonly block: BlockNode;
  /** From the root of the repository. */
  readonly path: string;
  /** Of its first character, counted from 0. */
  readonly line: number;
}

/** What one commit did to the logs of the build. */
export interface Step {
  /** Undefined of what is on disk and has not been committed. */
  readonly commit: CommitWithLogs | undefined;
  /** Against the first parent. */
  readonly gone: readonly PlacedBlock[];
  readonly come: readonly PlacedBlock[];
  /** Of a merge, the blocks of its other parents, each with all of them. */
  readonly others: readonly (readonly BlockNode[])[];
}

/** The files on disk, by their paths from the root of the repository. */
export type WorkingFiles = ReadonlyMap<string, string>;

/** As many commits are read at a time: what they wrote is held in memory. */
const AT_ONCE = 200;

/** The commits that touched a log of the build, and what is on disk. */
export async function stepsOf(
  repository: Repository,
  until: Commit,
  working: WorkingFiles,
): Promise<readonly Step[] | GitFault> {
  const commits = await repository.commitsOfLogs(until);
  if (isGitFault(commits)) return commits;
  const foreign = new Set<string>();
  for (;;) {
    const walk = new Walk(commits, new OwnFiles(commits, repository.prefix, foreign));
    const fault = await walk.through(repository);
    if (fault !== undefined) return fault;
    if (walk.foreign.size === 0) return [...walk.steps, ...walk.uncommitted(working)];
    // Only on the way it was seen that files which were moved went into another build: once more without them.
    for (const path of walk.foreign) foreign.add(path);
  }
}

class Walk {
  readonly steps: Step[] = [];
  /** Where files came from that were moved into another build below the folder. */
  readonly foreign = new Set<string>();
  private readonly commits: readonly CommitWithLogs[];
  private readonly own: OwnFiles;
  /** The files at each commit that has children still to come: those that can be of the build. */
  private readonly filesAt = new Map<string, Files>();
  private readonly childrenLeft = new Map<string, number>();

  constructor(commits: readonly CommitWithLogs[], own: OwnFiles) {
    this.commits = commits;
    this.own = own;
    for (const { parents } of commits)
      for (const parent of parents) this.childrenLeft.set(parent, (this.childrenLeft.get(parent) ?? 0) + 1);
  }

  async through(repository: Repository): Promise<GitFault | undefined> {
    const part = (from: number) => this.commits.slice(from, from + AT_ONCE);
    const read = (from: number) => repository.contents(part(from).flatMap((commit) => this.blobsOf(commit)));
    let reading = read(0);
    for (let from = 0; from < this.commits.length; from += AT_ONCE) {
      const contents = await reading;
      if (isGitFault(contents)) return contents;
      // Git reads the next while these are gone through.
      reading = read(from + AT_ONCE);
      for (const commit of part(from)) this.step(commit, contents);
    }
    return undefined;
  }

  /** What is on disk against the last commit. */
  uncommitted(working: WorkingFiles): readonly Step[] {
    const last = this.commits.at(-1);
    const before = this.own.among((last && this.filesAt.get(last.id)) ?? NO_FILES);
    const now = new Map(
      [...working].map(([path, text]) => [path, versionAfter(before.get(path), Buffer.from(text))] as const),
    );
    const { gone, come } = unlike(before, now);
    return gone.length === 0 && come.length === 0 ? [] : [{ commit: undefined, gone, come, others: [] }];
  }

  /** The contents that a commit wrote. */
  private blobsOf({ logs }: CommitWithLogs): readonly string[] {
    return logs.flatMap((log) => (log.is !== "removed" && this.own.canBe(log.path) ? [log.blob] : []));
  }

  /** Takes the next commit; its parents have been taken before. */
  private step(commit: CommitWithLogs, contents: ReadonlyMap<string, Buffer>): void {
    const [parent = NO_FILES, ...others] = commit.parents.map((id) => this.filesAt.get(id) ?? NO_FILES);
    const files = this.filesAfter(parent, commit, others, contents);
    for (const path of this.own.foreignSources(files, commit)) this.foreign.add(path);
    const [before, now] = [this.own.among(parent), this.own.among(files)];
    if (!isSame(before, now)) {
      const blocks = others.map((other) => blocksOf(this.own.among(other)));
      this.steps.push({ commit, ...unlike(before, now), others: blocks });
    }
    this.filesAt.set(commit.id, files);
    for (const id of commit.parents) {
      const left = (this.childrenLeft.get(id) ?? 1) - 1;
      this.childrenLeft.set(id, left);
      if (left === 0) this.filesAt.delete(id);
    }
  }

  private filesAfter(
    before: Files,
    { logs }: CommitWithLogs,
    others: readonly Files[],
    contents: ReadonlyMap<string, Buffer>,
  ): Files {
    const files = new Map(before);
    for (const log of logs) if (log.is === "renamed") files.delete(log.from);
    for (const log of logs) {
      if (log.is === "removed") files.delete(log.path);
      else if (this.own.canBe(log.path)) {
        const content = contents.get(log.blob);
        const earlier = log.is === "renamed" ? log.from : log.path;
        // A branch may be nearer to what it was merged to.
        const near = before.get(earlier) ?? others.find((files) => files.has(log.path))?.get(log.path);
        if (content !== undefined) files.set(log.path, versionAfter(near, content));
      }
    }
    return files;
  }
}

const NO_FILES: Files = new Map();

function isSame(before: Files, now: Files): boolean {
  return before.size === now.size && [...now].every(([path, version]) => before.get(path) === version);
}

interface Difference {
  readonly gone: readonly PlacedBlock[];
  readonly come: readonly PlacedBlock[];
}

/** The blocks that one side has and the other has not; those of files that are the same are not looked at. */
function unlike(before: Files, now: Files): Difference {
  const gone: PlacedBlock[] = [];
  const come: PlacedBlock[] = [];
  for (const [path, version] of now) {
    const old = before.get(path);
    if (old === version) continue;
    const difference = unlikeBlocks(path, old, version);
    gone.push(...difference.gone);
    come.push(...difference.come);
  }
  for (const [path, old] of before) if (!now.has(path)) gone.push(...unlikeBlocks(path, old, undefined).gone);
  return { gone, come };
}

function unlikeBlocks(path: string, old: Version | undefined, now: Version | undefined): Difference {
  const [was, is] = [old?.document.blocks ?? [], now?.document.blocks ?? []];
  let start = 0;
  while (start < was.length && start < is.length && was[start] === is[start]) start++;
  let behind = 0;
  while (behind < Math.min(was.length, is.length) - start && was.at(-(1 + behind)) === is.at(-(1 + behind)))
    behind++;
  return { gone: placed(path, old, start, behind), come: placed(path, now, start, behind) };
}

function placed(path: string, version: Version | undefined, start: number, behind: number): PlacedBlock[] {
  if (version === undefined) return [];
  const { blocks, lines } = version.document;
  return blocks
    .slice(start, blocks.length - behind)
    .map((block, index) => ({ block, path, line: lines[start + index] ?? 0 }));
}

function blocksOf(files: Files): readonly BlockNode[] {
  return [...files.values()].flatMap(({ document }) => document.blocks);
}

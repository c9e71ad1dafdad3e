/** The history of one thing of a build, from its files and the repository around them. */
import { gather } from "../build/definitions.ts";
import { inOrder } from "../build/source.ts";
import type { IsoDate } from "../quantities/dates.ts";
import type { Commit } from "./commit.ts";
import type { WorkingBuild } from "./compare-revisions.ts";
import type { GitFault } from "./git-fault.ts";
import { isGitFault } from "./git-fault.ts";
import { namesThroughTime } from "./record/earlier-names.ts";
import type { Entry } from "./record/history.ts";
import { historyOf } from "./record/history.ts";
import { Statements } from "./record/statements.ts";
import { stepsOf } from "./record/steps.ts";
import type { Subject, SubjectFault } from "./record/subject.ts";
import { subjectsOf } from "./record/subject.ts";
import { Repository } from "./repository.ts";

export interface ThingHistory {
  readonly subject: Subject;
  /** The names it had before, newest first. */
  readonly earlierNames: readonly string[];
  readonly entries: readonly Entry[];
  /** Commits that touched the log. */
  readonly commits: number;
  /** The last commit, against which stands what is not committed yet. */
  readonly head: Commit;
  /** The build's folder, from the root of the repository, with `/` behind it; empty for the root. */
  readonly prefix: string;
  /** In a shallow clone, the day of its oldest commit. */
  readonly since: string | undefined;
}

export async function historyOfThing(
  { folder, files, options }: WorkingBuild,
  ref: string,
  signal?: AbortSignal,
): Promise<ThingHistory | GitFault | SubjectFault> {
  const defined = gather(inOrder(files));
  const subjects = subjectsOf(defined, ref);
  if ("is" in subjects) return subjects;
  const repository = await Repository.around(folder, signal);
  if (isGitFault(repository)) return repository;
  const head = await repository.commit("HEAD");
  if (isGitFault(head)) return head;
  const { prefix, since } = repository;
  const working = new Map(files.map(({ path, document }) => [prefix + path, document.text]));
  const steps = await stepsOf(repository, head, working);
  if (isGitFault(steps)) return steps;
  const commits = steps.filter(({ commit }) => commit !== undefined).length;
  if (commits === 0) return { fault: "not recorded", folder };
  const today: IsoDate = options.on ?? options.clock;
  const histories = subjects.map((subject): ThingHistory => {
    const names = namesThroughTime(subject.ref, steps);
    const entries = historyOf(steps, new Statements(subject, names, defined), today);
    return { subject, earlierNames: names.slice(1), entries, commits, head, prefix, since };
  });
  const found = histories.find(({ entries }) => entries.length > 0) ?? histories.at(-1);
  return found ?? { is: "unreadable", text: ref };
}

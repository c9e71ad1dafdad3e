/** Requests about what git keeps of a build: declared in protocol.ts. The code that answers them is loaded late. */
import type { CancellationToken } from "vscode-languageserver";
import type { BuildRecord } from "../../history/build-record.ts";
import type { GitFault } from "../../history/git-fault.ts";
import { isGitFault, sayGitFault } from "../../history/git-fault.ts";
import type { ChosenBuild } from "../features/views/chosen-build.ts";
import { subjectAt } from "../names/subject-at.ts";
import type { OfPlace, RecordRequests, Refusal } from "../protocol.ts";
import type { Session } from "../session.ts";
import { chosenBuild } from "./views.ts";

export function answerOfRecord(session: Session): void {
  answer(session, "cotter/commits", async ({ record, signal }) => {
    const { recordedCommit } = await import("../features/views/record.ts");
    const commits = await record.commits(signal);
    return isGitFault(commits) ? refused(commits) : recorded(commits.map(recordedCommit));
  });
  answer(session, "cotter/compare", async ({ record, chosen, signal }, { from, to }) => {
    const { comparedBuild } = await import("../features/views/record.ts");
    const comparison = await record.compare(filesOf(chosen), from, to ?? undefined, signal);
    return isGitFault(comparison) ? refused(comparison) : recorded(comparedBuild(chosen, comparison));
  });
  answer(session, "cotter/recordedText", async ({ record, signal }, { commit, path }) => {
    const text = await record.text(commit, path, signal);
    return typeof text === "string" ? recorded(text) : refused(text);
  });
  answer(session, "cotter/history", async ({ record, chosen, signal }, { ref }) => {
    const { recordOfThing } = await import("../features/views/record.ts");
    const history = await record.history(filesOf(chosen), ref, signal);
    if ("is" in history) return { is: "refused", why: "unclear", message: history.text };
    return isGitFault(history) ? refused(history) : recorded(recordOfThing(chosen, history));
  });
  session.connection.onRequest("cotter/thingAt", ({ uri, ...position }: OfPlace, token: CancellationToken) =>
    session.answer(uri, token, null, (view) => subjectAt(view, position) ?? null),
  );
}

interface Asked {
  readonly record: BuildRecord;
  readonly chosen: ChosenBuild;
  /** Given when the request is called off. */
  readonly signal: AbortSignal;
}

type AskedOfGit = Exclude<keyof RecordRequests, "cotter/thingAt">;
type Answer<M extends AskedOfGit> = NonNullable<RecordRequests[M]["result"]>;

function answer<M extends AskedOfGit>(
  session: Session,
  method: M,
  compute: (asked: Asked, params: RecordRequests[M]["params"]) => Promise<Answer<M>>,
): void {
  const { connection, records } = session;
  connection.onRequest(method, (params: RecordRequests[M]["params"], token: CancellationToken) =>
    session.answerMeanwhile<Answer<M> | Refusal | null>(token, FAILED, async (signal) => {
      const chosen = chosenBuild(session, params);
      if (chosen === undefined) return null;
      if (!records.trusted) return NOT_TRUSTED;
      const record = await records.of(chosen.snapshot.folder);
      return record === undefined ? NOT_ON_DISK : await compute({ record, chosen, signal }, params);
    }),
  );
}

const FAILED: Refusal = {
  is: "refused",
  why: "failed",
  message: "an error of Cotter itself, which its log tells of",
};

const NOT_TRUSTED: Refusal = {
  is: "refused",
  why: "not trusted",
  message: "git is started only in a folder that is trusted",
};

const NOT_ON_DISK: Refusal = {
  is: "refused",
  why: "not on disk",
  message: "the build is not in a folder of this machine, so there is no git for it",
};

function recorded<T>(value: T) {
  return { is: "recorded", value } as const;
}

function refused(fault: GitFault): Refusal {
  return { is: "refused", why: fault.fault, message: sayGitFault(fault) };
}

function filesOf({ snapshot: { logs, options } }: ChosenBuild) {
  return { files: logs.map(({ file }) => file), options };
}

/** Why git could not answer, in words for the one who asked. */

export type GitFault =
  | { readonly fault: "no git" }
  | { readonly fault: "no repository"; readonly folder: string }
  /** git refuses a repository that belongs to somebody else; @param folder its root */
  | { readonly fault: "not yours"; readonly folder: string }
  | { readonly fault: "no commit" }
  | { readonly fault: "bad revision"; readonly revision: string; readonly reason: string }
  /** @param since in a shallow clone, the day of the oldest commit that is there */
  | { readonly fault: "unknown revision"; readonly revision: string; readonly since: string | undefined }
  /** Of a day before the first commit. */
  | {
      readonly fault: "nothing by then";
      readonly day: string;
      readonly first: string;
      readonly since: string | undefined;
    }
  /** Of neither of two revisions; @param folder empty for the root of the repository */
  | { readonly fault: "no build"; readonly from: string; readonly to: string; readonly folder: string }
  | { readonly fault: "not recorded"; readonly folder: string }
  | { readonly fault: "failed"; readonly message: string };

export function isGitFault(answer: object): answer is GitFault {
  return "fault" in answer;
}

/** Where git says of a repository that it is another user's; @param folder one in it, where git does not name its root */
export function notYours(error: string, folder: string): GitFault | undefined {
  if (!/dubious ownership/.test(error)) return undefined;
  const [, root] = /in repository at '(.+)'/.exec(error) ?? [];
  return { fault: "not yours", folder: root ?? folder };
}

/** One clause without a full stop, as the program's messages are. */
export function sayGitFault(fault: GitFault): string {
  switch (fault.fault) {
    case "no git":
      return "git is not installed, or not on the path: the record of what was written when is kept by it";
    case "no repository":
      return `${fault.folder} is in no git repository: cotter start --git makes one for the build around this folder`;
    case "not yours":
      return `git does not trust the repository ${fault.folder}, since it belongs to another user: if you do, tell git so with git config --global --add safe.directory ${JSON.stringify(fault.folder)}`;
    case "no commit":
      return "nothing has been committed yet: git add and git commit make the first record";
    case "bad revision":
      return `${fault.revision} is no revision: ${fault.reason}`;
    case "unknown revision":
      return `git knows no revision ${fault.revision}${sayShallow(fault.since)}`;
    case "nothing by then":
      return `nothing had been committed by ${fault.day}: the first commit is of ${fault.first}${sayShallow(fault.since)}`;
    case "no build":
      return `neither at ${fault.from} nor at ${fault.to} was there a build in ${fault.folder === "" ? "the repository" : fault.folder.replace(/\/$/, "")}`;
    case "not recorded":
      return `no .cotter file of ${fault.folder} has been committed: git add and git commit make the first record`;
    case "failed":
      return `git could not answer: ${fault.message}`;
  }
}

/** What a shallow clone leaves out; empty for a whole one. */
export function sayShallow(since: string | undefined): string {
  return since === undefined
    ? ""
    : `; this is a shallow clone, which goes back to ${since} only: git fetch --unshallow brings the rest`;
}

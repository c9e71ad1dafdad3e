/** Which commit wrote each line of a file as it was committed last. */
import type { GitFault } from "./git-fault.ts";
import { isGitFault } from "./git-fault.ts";
import { runGit } from "./git-process.ts";

export interface BlamedLine {
  readonly text: string;
  readonly commit: string;
  readonly author: string;
  /** The day on which it was written, by the author's own clock. */
  readonly day: string;
}

/**
 * The lines of a file at HEAD. White space is not looked at, and lines that a commit moved from another file keep the
 * commit that wrote them. Commits that the user's own `blame.ignoreRevsFile` names are passed over.
 * @returns nothing of a file that is not in that commit
 * @param root of the repository; @param path of the file, from there
 */
export async function blame(root: string, path: string): Promise<readonly BlamedLine[] | GitFault> {
  const words = ["blame", "--porcelain", "-w", "-C", "--no-textconv", "HEAD", "--", path];
  const answer = await runGit(root, words);
  if (isGitFault(answer)) return answer;
  if (answer.status !== 0) return /no such path/.test(answer.error) ? [] : faultOf(answer.error);
  return parseBlame(answer.out.toString("utf8"));
}

/** The file of passed-over commits is named in a setting, where a reader of git's words alone would not look. */
function faultOf(error: string): GitFault {
  const where = /object name list/.test(error) ? " (the setting blame.ignoreRevsFile names it)" : "";
  return { fault: "failed", message: `${error}${where}` };
}

type Writer = Pick<BlamedLine, "commit" | "author" | "day">;

/** A line `ID OLD NEW`, what is known of the commit if it comes for the first time, then a tab and the text. */
function parseBlame(out: string): readonly BlamedLine[] {
  const writers = new Map<string, Writer>();
  const lines: BlamedLine[] = [];
  let [commit, author, seconds] = ["", "", 0];
  for (const line of out.split("\n")) {
    if (line.startsWith("\t")) {
      const known = writers.get(commit);
      if (known !== undefined) lines.push({ ...known, text: line.slice(1) });
      continue;
    }
    const [word = "", ...rest] = line.split(" ");
    const said = rest.join(" ");
    if (/^[0-9a-f]{40,}$/.test(word)) commit = word;
    else if (word === "author") author = said;
    else if (word === "author-time") seconds = Number(said);
    else if (word === "author-tz") writers.set(commit, { commit, author, day: dayAt(seconds, said) });
  }
  return lines;
}

/** @param zone `+0130` */
function dayAt(seconds: number, zone: string): string {
  const [, sign = "+", hours = "0", minutes = "0"] = /^([+-])(\d\d)(\d\d)$/.exec(zone) ?? [];
  const ahead = (Number(hours) * 60 + Number(minutes)) * (sign === "-" ? -60 : 60);
  return new Date((seconds + ahead) * 1000).toISOString().slice(0, 10);
}

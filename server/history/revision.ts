/** The text of a revision, before git sees it. */
import { isDateFault, readDate } from "../quantities/dates.ts";
import type { GitFault } from "./git-fault.ts";

/** Longer than any name that git keeps. */
const LONGEST = 250;
const CONTROL = /\p{Cc}/u;

/** Undefined for a text that can name one commit and nothing else; git then says whether it does. */
export function revisionFault(revision: string): GitFault | undefined {
  const reason = whyNot(revision);
  if (reason === undefined) return undefined;
  const shown = revision.slice(0, 40).replace(/\p{Cc}/gu, "\ufffd");
  return { fault: "bad revision", revision: shown === "" ? '""' : shown, reason };
}

function whyNot(revision: string): string | undefined {
  if (revision.trim() === "") return "write a commit, a branch, a tag or a day such as 2026-05-02";
  if (revision.length > LONGEST) return "it is too long";
  if (CONTROL.test(revision)) return "it holds control characters";
  if (revision.startsWith("-")) return "it begins like an option";
  if (revision.includes("..") || /^\^|\^[@!-]/.test(revision)) return "it names several commits; name one";
  if (revision.includes(":")) return "it names a file; name a commit";
  return undefined;
}

/** Whether it is a day: the last commit of that day is meant. */
export function isDay(revision: string): boolean {
  return !isDateFault(readDate(revision));
}

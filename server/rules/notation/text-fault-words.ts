/** What was found in the text and what was expected, as the lexer and parser report it, in words. */
import type { TextFaultData } from "../../build/finding-data.ts";

/** `stel is not read here: expected steel, …`, or the reason where one is known. */
export function foundInstead({ found, expected, reason }: TextFaultData): string {
  const said =
    reason ?? (found === "" ? "something is missing here" : `${shortened(found)} is not read here`);
  return expected === "" ? said : `${said}: expected ${expected}`;
}

/** Longer stretches of a line than this are cut in a message; the place shows them whole. */
const LONGEST = 40;

export function shortened(text: string): string {
  return text.length <= LONGEST ? text : `${text.slice(0, LONGEST - 1).trimEnd()}…`;
}

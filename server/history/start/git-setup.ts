/** What a repository is told about logs: how to show, compare and merge them, and what to ask before a commit. */
import { vocabulary } from "../../../grammar/vocabulary/vocabulary.ts";

/** How a shell finds the program, now and in a year. */
export interface Program {
  /** Succeeds where it is there. */
  readonly probe: string;
  readonly call: string;
}

/** The line that tells git which files are logs. A clone without the settings below uses git's own ways. */
export const ATTRIBUTES = "*.cotter text diff=cotter merge=cotter\n";

/** The settings behind the attributes, which git does not take from a clone: key and value. */
export function settingsFor({ probe, call }: Program): readonly (readonly [key: string, value: string])[] {
  const [base, ours, theirs, name] = ["%O", "%A", "%B", "%P"];
  return [
    ["diff.cotter.xfuncname", HUNK_HEADER],
    ["diff.cotter.wordRegex", WORD],
    ["merge.cotter.name", "build diaries, block by block"],
    [
      "merge.cotter.driver",
      `if ${probe}; then ${call} merge-file ${base} ${ours} ${theirs} ${name}; else git merge-file ${ours} ${base} ${theirs}; fi`,
    ],
  ];
}

/** The header of the block that a change stands in: the day, the part. */
const HUNK_HEADER = `^((${vocabulary.blocks.map(({ word }) => word).join("|")})[ \t]+[^ \t].*)$`;

const NUMBER = "[-+]?[0-9]+([.][0-9]+)?(-?[0-9]*/[0-9]+)?";
/** Letters that are more than one byte stand alone: between brackets, git may take them byte by byte. */
const UNIT = "([A-Za-z%]|µ|°)([A-Za-z0-9./]|µ|°|·)*";
const TOLERANCE = `(±|[+]-) ?${NUMBER}`;
const VALUE = `${NUMBER}([.][.]${NUMBER})*( ?${TOLERANCE})?( ?${UNIT})?( ${TOLERANCE}( ?${UNIT})?)?`;

/** What a comparison by words holds together: a date, a value with its tolerance and unit, a path, else one character. */
const WORD = [
  "[0-9]{4}-[0-9]{2}-[0-9]{2}",
  VALUE,
  "[A-Za-z_][A-Za-z0-9_]*([.][A-Za-z0-9_*]+)*",
  "[^[:space:]]",
].join("|");

/** A hook that stops a commit with an error in the log. It reads what is on disk, not what is staged. */
export function hookFor({ probe, call }: Program, folder: string): string {
  return `#!/bin/sh
# Checks the build before a commit: an error in the log stops it. Written by "cotter start --hook".
# To commit all the same: git commit --no-verify. To be rid of it: delete this file.
git diff --cached --quiet -- '*.cotter' && exit 0
${probe} || exit 0
cd "$(git rev-parse --show-toplevel)" || exit 0
${call} check --build ${quoted(folder === "" ? "." : folder)} && exit 0
echo 'The log has errors, so nothing was committed. "git commit --no-verify" commits it all the same.' >&2
exit 1
`;
}

/** A word for a shell, whatever it holds. */
export function quoted(word: string): string {
  return `'${word.replaceAll("'", "'\\''")}'`;
}

/**
 * The record of one invented build in thirty commits: twenty evenings by JR, in which a reading is altered, a limit is
 * loosened, a part is renamed and the diary is moved to a folder; then KT writes four evenings in the shed on a branch of
 * his own, JR three at home, and JR takes them over.
 */
import type { ScriptedCommit } from "./scripted-repository.ts";

export const ALTERED = 8;
export const LOOSENED = 12;
export const RENAMED = 15;
export const MOVED = 18;
export const MERGED = 28;

const VEHICLE = `vehicle "Marsh Kestrel"
  past: known
  today: 2026-06-30

gauge mic25 "Micrometer"
  resolution: 0.01 mm

`;

function parts(disc: string, thickness: string): string {
  return `part front.left.hub "Hub"

part front.left.${disc} "Brake disc"
  material: cast_iron
  limit: thickness min ${thickness}

part rear.drum "Brake drum"
  limit: bore max 230.5 mm
`;
}

/** The day of a commit: each is written on the evening that it tells of. */
export function dayOf(commit: number): string {
  return `2026-05-${String(commit).padStart(2, "0")}`;
}

function evening(commit: number, lines: readonly string[]): string {
  return `\nday ${dayOf(commit)} 1 h\n${lines.map((line) => `  ${line}\n`).join("")}`;
}

export function thirtyCommits(): readonly ScriptedCommit[] {
  const commits: ScriptedCommit[] = [];
  let [disc, limit, diary, file] = ["rotor", "8.7 mm", "# The diary.\n", "diary.cotter"];
  const commit = (more: Partial<ScriptedCommit> & Pick<ScriptedCommit, "files">) =>
    void commits.push({ day: dayOf(commits.length + 1), ...more });
  commit({ files: { "build.cotter": VEHICLE + parts(disc, limit), [file]: diary } });
  while (commits.length < 20) {
    const number = commits.length + 1;
    if (number === ALTERED) diary = diary.replace("9.12 mm", "9.42 mm");
    if (number === LOOSENED) limit = "8.4 mm";
    if (number === RENAMED) [disc, diary] = ["disc", diary.replaceAll("front.left.rotor", "front.left.disc")];
    const removed: Record<string, null> = number === MOVED ? { [file]: null } : {};
    if (number === MOVED) file = "log/diary.cotter";
    const reading = [`measured: front.left.${disc} thickness 9.12 mm with mic25`];
    diary += evening(number, number === 2 ? reading : [`Evening ${number}.`, "cleaned: front.left.hub"]);
    commit({ files: { "build.cotter": VEHICLE + parts(disc, limit), [file]: diary, ...removed } });
  }
  let shed = diary;
  for (const number of [21, 22, 23, 24]) {
    shed += evening(number, [`measured: rear.drum bore 229.${number} mm`]);
    commit({ author: "KT", branch: "shed", files: { [file]: shed } });
  }
  let home = diary;
  for (const number of [25, 26, 27]) {
    home += evening(number, ["cleaned: front.left.hub by solvent"]);
    commit({ files: { [file]: home }, ...(number === 25 ? { from: 20 } : {}) });
  }
  const both = shed + home.slice(diary.length);
  commit({ files: { [file]: both }, merges: 24, message: "Both" });
  commit({ files: { [file]: both + evening(29, ["removed: front.left.disc"]) } });
  const last = evening(29, ["removed: front.left.disc"]) + evening(30, ["decided: front.left.disc renew"]);
  commit({ files: { [file]: both + last } });
  return commits;
}

/** The build in a folder on disk, as the program opens it. */

import type { WorkingBuild } from "../../server/history/compare-revisions.ts";
import type { IsoDate } from "../../server/quantities/dates.ts";
import { disk } from "../../server/workspace/disk.ts";
import { openBuild } from "../../server/workspace/open-build.ts";

export async function openWorking(folder: string): Promise<WorkingBuild> {
  const opened = await openBuild(disk, folder);
  if (opened.is !== "build") throw new Error(`no build in ${folder}`);
  return { folder: opened.folder, files: opened.files, options: { clock: "2026-06-30" as IsoDate } };
}

/** Logs on disk: those of the folder itself, however it is linked. */
import { symlinkSync } from "node:fs";
import path from "node:path";
import { expect, it } from "vitest";
import { disk } from "../../server/workspace/disk.ts";
import { folderWith } from "../command-line/program.ts";

it("looks for logs in the folder alone: no link to a file or folder is followed, no circle of links has no end", async () => {
  const outside = folderWith({ "secret.cotter": "" });
  const folder = folderWith({ "build.cotter": "", "parts/hub.cotter": "", ".hidden/old.cotter": "" });
  symlinkSync(outside, path.join(folder, "parts/outside"));
  symlinkSync(path.join(outside, "secret.cotter"), path.join(folder, "secret.cotter"));
  symlinkSync(folder, path.join(folder, "parts/circle"));
  const paths = ["build.cotter", "parts/hub.cotter"].map((name) => `${folder}/${name}`);
  expect(await disk.logsBelow(folder)).toEqual(paths);
  expect(await disk.logsIn(folder)).toEqual(paths.slice(0, 1));
});

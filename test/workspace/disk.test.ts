/** Logs on disk: those of the folder itself, however it is linked; for the server, and for a program that reads them at once. */
import { symlinkSync } from "node:fs";
import path from "node:path";
import { expect, it } from "vitest";
import { diskAtOnce } from "../../server/command-line/disk-at-once.ts";
import { disk } from "../../server/workspace/disk.ts";
import { openBuild } from "../../server/workspace/open-build.ts";
import { folderWith } from "../command-line/program.ts";

const stores = [
  ["disk", disk],
  ["diskAtOnce", diskAtOnce],
] as const;

it.each(stores)(
  "%s looks for logs in the folder alone: no link to a file or folder is followed, no circle of links has no end",
  async (_, store) => {
    const outside = folderWith({ "secret.cotter": "" });
    const folder = folderWith({ "build.cotter": "", "parts/hub.cotter": "", ".hidden/old.cotter": "" });
    symlinkSync(outside, path.join(folder, "parts/outside"));
    symlinkSync(path.join(outside, "secret.cotter"), path.join(folder, "secret.cotter"));
    symlinkSync(folder, path.join(folder, "parts/circle"));
    const paths = ["build.cotter", "parts/hub.cotter"].map((name) => `${folder}/${name}`);
    expect(await store.logsBelow(folder)).toEqual(paths);
    expect(await store.logsIn(folder)).toEqual(paths.slice(0, 1));
  },
);

it.each(stores)(
  "%s tells files from folders and from what is not there, and reads what is",
  async (_, store) => {
    const folder = folderWith({ "build.cotter": 'vehicle "Ä"\n', "photos/a.png": "" });
    const outside = folderWith({ "b.png": "" });
    symlinkSync(path.join(outside, "b.png"), path.join(folder, "photos/b.png"));
    const [log, none] = [`${folder}/build.cotter`, `${folder}/none`];
    expect(await Promise.all([log, folder, none].map(store.isFile))).toEqual([true, false, false]);
    expect(await Promise.all([log, folder, none].map(store.isFolder))).toEqual([false, true, false]);
    expect(await store.read(log)).toBe('vehicle "Ä"\n');
    await expect(store.read(none)).rejects.toThrow("ENOENT: no such file or directory, open");
    await expect(store.logsBelow(none)).rejects.toThrow("ENOENT");
    expect(await store.logsIn(none)).toEqual([]);
    const within = (photo: string) => store.isFileWithin(folder, photo);
    expect(await Promise.all(["photos/a.png", "photos", "photos/b.png", "../b.png"].map(within))).toEqual([
      true,
      false,
      false,
      false,
    ]);
  },
);

it("is asked once for each log of a build", async () => {
  const folder = folderWith({ "build.cotter": 'vehicle "V"\n', "more.cotter": "", "parts/hub.cotter": "" });
  const read: string[] = [];
  const counting = {
    ...diskAtOnce,
    read: (file: string) => {
      read.push(path.relative(folder, file));
      return diskAtOnce.read(file);
    },
  };
  const opened = await openBuild(counting, path.join(folder, "parts/hub.cotter"));
  expect(opened).toMatchObject({ is: "build", folder });
  expect(read.sort()).toEqual(["build.cotter", "more.cotter", "parts/hub.cotter"]);
});

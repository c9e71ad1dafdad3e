/** Files that come, change and go, as builds: what is open as the editor has it, all else as it is on disk. */
import { beforeEach, describe, expect, test } from "vitest";
import type { IsoDate } from "../../server/quantities/dates.ts";
import { folderAround, relativeTo } from "../../server/workspace/file-store.ts";
import type { TextChange } from "../../server/workspace/workspace.ts";
import { Workspace } from "../../server/workspace/workspace.ts";
import { MemoryFiles } from "./memory-files.ts";

let files: MemoryFiles;
let workspace: Workspace;
let changes: number;

beforeEach(() => {
  files = new MemoryFiles();
  changes = 0;
  workspace = new Workspace({
    files,
    clock: () => "2026-06-01" as IsoDate,
    nameWithin: relativeTo,
    onChange: () => {
      changes++;
    },
    onTrouble: (message) => {
      throw new Error(message);
    },
  });
});

/** The builds as folder and files. */
const builds = () =>
  workspace
    .everyBuild()
    .map(({ folder, logs }) => `${folder}: ${logs.map(({ file }) => file.path).join(" ")}`)
    .sort();

const codesOf = (path: string) => {
  const build = workspace.buildOf(path);
  const log = build?.log(path);
  return log === undefined ? undefined : (build?.complaintsByLog.get(log) ?? []).map(({ code }) => code);
};

/** Types a text behind what is there. */
const typed =
  (text: string) =>
  (document: { length: number }): TextChange => ({
    start: document.length,
    end: document.length,
    text,
  });

describe("logs make builds", () => {
  test("by the folder of their vehicle, down to a folder with one of its own", async () => {
    files.texts.set("/cars/a/vehicle.cotter", 'vehicle "A"\n');
    files.texts.set("/cars/a/diary/may.cotter", "day 2026-05-02\n");
    files.texts.set("/cars/a/donor/vehicle.cotter", 'vehicle "B"\n');
    await workspace.addRoot("/cars");
    expect(builds()).toEqual(["/cars/a/donor: vehicle.cotter", "/cars/a: diary/may.cotter vehicle.cotter"]);
  });

  test("without a vehicle all of a root make one", async () => {
    files.texts.set("/bits/a.cotter", "part a\n");
    files.texts.set("/bits/b.cotter", "day 2026-05-02\n  removed: a\n");
    await workspace.addRoot("/bits");
    expect(builds()).toEqual(["/bits: a.cotter b.cotter"]);
    expect(codesOf("/bits/b.cotter")).toEqual([]);
  });

  test("a file alone brings the build around it, which goes when it is closed", async () => {
    files.texts.set("/cars/a/vehicle.cotter", 'vehicle "A"\n');
    files.texts.set("/cars/a/diary/may.cotter", "day 2026-05-02\n");
    await workspace.open("/cars/a/diary/may.cotter", "day 2026-05-02\n", 1);
    expect(builds()).toEqual(["/cars/a: diary/may.cotter vehicle.cotter"]);
    await workspace.close("/cars/a/diary/may.cotter");
    expect(builds()).toEqual([]);
  });

  test("so does a root below a vehicle", async () => {
    files.texts.set("/cars/a/vehicle.cotter", 'vehicle "A"\n');
    files.texts.set("/cars/a/diary/may.cotter", "day 2026-05-02\n");
    await workspace.addRoot("/cars/a/diary");
    expect(builds()).toEqual(["/cars/a: diary/may.cotter vehicle.cotter"]);
    workspace.removeRoot("/cars/a/diary");
    expect(builds()).toEqual([]);
  });

  test("two files outside of every folder, without a vehicle, know nothing of each other", async () => {
    await workspace.open("/tmp/a.cotter", "part a\n", 1);
    await workspace.open("/tmp/b.cotter", "day 2026-05-02\n  removed: a\n", 1);
    expect(builds()).toHaveLength(2);
    expect(codesOf("/tmp/b.cotter")).toContain("unknown-reference");
  });

  test("unsaved texts, which are in no folder, are each a build of their own", async () => {
    await workspace.open("untitled:Untitled-1", 'vehicle "A"\npart hub\n', 1);
    await workspace.open("untitled:Untitled-2", "day 2026-05-02\n  removed: hub\n", 1);
    files.texts.set("/cars/a/parts.cotter", "part disc\n");
    await workspace.addRoot("/cars/a");
    expect(builds()).toEqual([
      "/cars/a: parts.cotter",
      "untitled:Untitled-1: untitled:Untitled-1",
      "untitled:Untitled-2: untitled:Untitled-2",
    ]);
    expect(workspace.everyBuild().map(({ hasVehicle }) => hasVehicle)).toEqual([true, false, false]);
    expect(codesOf("untitled:Untitled-2")).toContain("unknown-reference");
  });

  test("a vehicle that is typed draws its folder together", async () => {
    files.texts.set("/cars/a/x/diary.cotter", "day 2026-05-02\n");
    files.texts.set("/cars/a/y/parts.cotter", "part a\n");
    await workspace.addRoot("/cars/a");
    await workspace.open("/cars/a/y/parts.cotter", "part a\n", 1);
    workspace.edit("/cars/a/y/parts.cotter", 2, [typed('vehicle "Y"\n')]);
    expect(builds()).toEqual(["/cars/a/y: parts.cotter", "/cars/a: x/diary.cotter"]);
  });
});

describe("what changes", () => {
  beforeEach(async () => {
    files.texts.set("/a/vehicle.cotter", 'vehicle "A"\npart hub\n');
    files.texts.set("/a/diary.cotter", "day 2026-05-02\n  removed: hub\n");
    files.texts.set("/b/vehicle.cotter", 'vehicle "B"\n');
    await workspace.addRoot("/a");
    await workspace.addRoot("/b");
  });

  test("is computed again, and nothing else", async () => {
    await workspace.open("/a/diary.cotter", "day 2026-05-02\n  removed: hub\n", 1);
    const [a, b] = [workspace.buildOf("/a/diary.cotter"), workspace.buildOf("/b/vehicle.cotter")];
    expect(workspace.buildOf("/a/diary.cotter")).toBe(a);
    workspace.edit("/a/diary.cotter", 2, [typed("  removed: wing\n")]);
    expect(workspace.buildOf("/a/diary.cotter")).not.toBe(a);
    expect(workspace.buildOf("/b/vehicle.cotter")).toBe(b);
    expect(codesOf("/a/diary.cotter")).toContain("unknown-reference");
    expect(workspace.versionOf("/a/diary.cotter")).toBe(2);
  });

  test("in one file is felt in the others of its build", async () => {
    await workspace.open("/a/vehicle.cotter", 'vehicle "A"\npart hub\n', 1);
    expect(codesOf("/a/diary.cotter")).toEqual([]);
    workspace.edit("/a/vehicle.cotter", 2, [() => ({ text: 'vehicle "A"\n' })]);
    expect(codesOf("/a/diary.cotter")).toContain("unknown-reference");
  });

  test("by several edits at once, each on what the one before has left", async () => {
    await workspace.open("/a/diary.cotter", "", 1);
    workspace.edit("/a/diary.cotter", 2, [typed("day 2026-05-02\n"), typed("  removed: "), typed("hub\n")]);
    expect(workspace.documentOf("/a/diary.cotter")?.text).toBe("day 2026-05-02\n  removed: hub\n");
  });

  test("leaves the build before at hand until the new one is read", async () => {
    await workspace.open("/a/diary.cotter", "day 2026-05-02\n", 1);
    const before = workspace.buildOf("/a/diary.cotter")?.build;
    workspace.edit("/a/diary.cotter", 2, [typed("  A word.\n")]);
    workspace.edit("/a/diary.cotter", 3, [typed("  And one more.\n")]);
    const now = workspace.buildOf("/a/diary.cotter");
    expect(now?.recentBuild).toBe(before);
    expect(now?.recentBuild).not.toBe(now?.build);
    expect(now?.recentBuild).toBe(now?.build);
  });

  test("on disk counts for what is not open", async () => {
    await workspace.open("/a/diary.cotter", "day 2026-05-02\n", 1);
    files.texts.set("/a/diary.cotter", "day 2026-05-03\n");
    files.texts.set("/a/vehicle.cotter", 'vehicle "A"\npart nut\n');
    await workspace.filesChanged(["/a/diary.cotter", "/a/vehicle.cotter"]);
    expect(workspace.documentOf("/a/diary.cotter")?.text).toBe("day 2026-05-02\n");
    expect(workspace.documentOf("/a/vehicle.cotter")?.text).toContain("nut");
    await workspace.close("/a/diary.cotter");
    expect(workspace.documentOf("/a/diary.cotter")?.text).toBe("day 2026-05-03\n");
  });

  test("files and folders that go take their complaints along, open ones when they are closed", async () => {
    await workspace.open("/a/diary.cotter", "day 2026-05-02\n", 1);
    files.texts.delete("/a/diary.cotter");
    files.texts.delete("/a/vehicle.cotter");
    workspace.removed("/a");
    expect(builds()).toEqual(["/a: diary.cotter", "/b: vehicle.cotter"]);
    await workspace.close("/a/diary.cotter");
    expect(builds()).toEqual(["/b: vehicle.cotter"]);
  });

  test("in the settings grades complaints anew", async () => {
    await workspace.open("/a/diary.cotter", "day 2026-05-02\n  removed: wing\n", 1);
    workspace.setSeverities(new Map([["unknown-reference", "off"]]));
    expect(codesOf("/a/diary.cotter")).toEqual([]);
  });
});

test("a photo counts as there until the answer has come", async () => {
  files.texts.set("/a/log.cotter", 'vehicle "A"\nday 2026-05-02\n  photo: "p.png"\n  photo: "q.png"\n');
  files.texts.set("/a/q.png", "");
  await workspace.addRoot("/a");
  expect(codesOf("/a/log.cotter")).toEqual([]);
  const before = changes;
  while (changes === before) await Promise.resolve();
  expect(codesOf("/a/log.cotter")).toEqual(["photo-not-found"]);
  files.texts.set("/a/p.png", "");
  workspace.photosMayHaveChanged();
  expect(codesOf("/a/log.cotter")).toEqual([]);
});

test("reading can be given up", async () => {
  for (let index = 0; index < 100; index++) files.texts.set(`/a/${index}.cotter`, "part p\n");
  const seen: number[] = [];
  await workspace.addRoot("/a", (read) => {
    seen.push(read);
    return read === 0;
  });
  expect(seen).toHaveLength(2);
  expect(workspace.everyBuild().flatMap(({ logs }) => logs).length).toBeLessThan(100);
});

test("the end of all folders, of paths and of URIs", () => {
  const up = (folder: string) => {
    const folders: string[] = [];
    for (let at: string | undefined = folder; at !== undefined; at = folderAround(at)) folders.push(at);
    return folders;
  };
  expect(up("/a/b")).toEqual(["/a/b", "/a", "/"]);
  expect(up("file:///a/b")).toEqual(["file:///a/b", "file:///a", "file://"]);
  expect(up("vscode-vfs://github/a")).toEqual(["vscode-vfs://github/a", "vscode-vfs://github"]);
  expect(up("untitled:")).toEqual(["untitled:"]);
  expect(up("")).toEqual([""]);
});

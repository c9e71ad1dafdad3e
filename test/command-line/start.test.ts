/** `cotter start`: what a new user gets, and what git makes of it. */
import { spawnSync } from "node:child_process";
import {
  chmodSync,
  existsSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { beforeAll, describe, expect, it } from "vitest";
import { format } from "../../grammar/printer.ts";
import { git } from "../history/scripted-repository.ts";
import { bundledCotter, cotter, folderWith } from "./program.ts";

const DAY = ["--on", "2026-05-02"];

function committing(folder: string, message: string, ...words: readonly string[]) {
  const { status, stderr, stdout } = spawnSync("git", ["-C", folder, "commit", "-am", message, ...words], {
    encoding: "utf8",
  });
  return { status, said: stdout + stderr };
}

function asJr(folder: string): void {
  git(folder, ["config", "user.name", "JR"]);
  git(folder, ["config", "user.email", "jr@bench.example"]);
}

describe("cotter start", () => {
  it("makes a folder with a first file about which there is nothing to complain", async () => {
    const name = 'Marsh "Kestrel" 1600';
    const beside = mkdtempSync(path.join(tmpdir(), "cotter-start-"));
    expect(await cotter(["start", name, ...DAY], beside)).toMatchObject({ status: 0, err: "" });
    const folder = path.join(beside, name);
    expect(readdirSync(folder)).toEqual(["build.cotter"]);
    const { status, out } = await cotter(["check", ...DAY], folder);
    expect([status, out]).toEqual([0, "nothing to complain about\n"]);
    const text = readFileSync(path.join(folder, "build.cotter"), "utf8");
    expect(format(text)).toBe(text);
  });

  it("keeps what is there, and leaves nothing behind", async () => {
    const folder = folderWith({ "kestrel/notes.txt": "Mine." });
    const { status, err } = await cotter(["start", path.join(folder, "kestrel")], folder);
    expect(status).toBe(2);
    expect(err).toContain("kestrel is there already and was kept");
    expect((await cotter(["start", path.join(folder, "no/such/folder")], folder)).status).toBe(2);
    expect(readdirSync(folder)).toEqual(["kestrel"]);
    expect(readdirSync(path.join(folder, "kestrel"))).toEqual(["notes.txt"]);
  });

  it("takes away again what it made where not all of it can be made", async () => {
    const folder = folderWith({ "build.cotter": 'vehicle "Kestrel"\n' });
    git(folder, ["init", "--quiet"]);
    // No hook can be put into a folder that is a file.
    rmSync(path.join(folder, ".git/hooks"), { recursive: true });
    writeFileSync(path.join(folder, ".git/hooks"), "");
    const { status, err } = await cotter(["start", "--git", "--hook"], folder);
    expect([status, err]).toEqual([2, expect.stringContaining("cotter: git cannot be told of logs: ")]);
    expect(readdirSync(folder).toSorted()).toEqual([".git", "build.cotter"]);
    rmSync(path.join(folder, ".git/hooks"));
    expect(await cotter(["start", "--git", "--hook"], folder)).toMatchObject({ status: 0, err: "" });
  });

  it("says what it made to a machine", async () => {
    const folder = mkdtempSync(path.join(tmpdir(), "cotter-start-"));
    const { out } = await cotter(["start", path.join(folder, "kestrel"), "--git", "--json"], folder);
    expect(JSON.parse(out)).toMatchObject({
      schema: "cotter/start/1",
      files: ["build.cotter", ".gitattributes"],
      git: true,
      repository: "made",
    });
  });
});

describe("a repository that cotter start made", () => {
  let folder = "";
  let file = "";
  const write = (change: (text: string) => string) => writeFileSync(file, change(readFileSync(file, "utf8")));
  beforeAll(async () => {
    const beside = mkdtempSync(path.join(tmpdir(), "cotter-start-"));
    // The hook and the merge call the program that set them up, so it is one that can be called.
    const { status, err } = await bundledCotter(["start", "kestrel", "--git", "--hook", ...DAY], beside);
    if (status !== 0) throw new Error(err);
    folder = path.join(beside, "kestrel");
    file = path.join(folder, "build.cotter");
    asJr(folder);
    git(folder, ["add", "."]);
    git(folder, ["commit", "--quiet", "-m", "The first evening"]);
  });

  it("names the day or the joint above a change", () => {
    write((text) => text.replace("9.10, 9.14 mm", "9.00, 9.14 mm").replace("50 N.m ±", "45 N.m ±"));
    const hunks = git(folder, ["diff", "-U0"]).match(/^@@.*$/gm);
    expect(hunks?.map((hunk) => hunk.replace(/^@@.*@@ /, ""))).toEqual([
      'joint front.left.disc_bolts "Disc to hub"',
      "day 2026-05-02 2 h",
    ]);
  });

  it("holds a value with its tolerance together in a comparison by words", () => {
    const words = git(folder, ["diff", "--word-diff", "-U0"]);
    expect(words).toContain("torque: [-50 N.m ± 10 %-]{+45 N.m ± 10 %+}");
    expect(words).toContain("thickness 9.12, [-9.10-]{+9.00+}, 9.14 mm with mic25");
    git(folder, ["checkout", "--quiet", "."]);
  });

  it("follows one block through the commits", () => {
    write((text) => text.replace("min 8.4 mm", "min 8.7 mm"));
    git(folder, ["commit", "--quiet", "--no-verify", "-am", "Tighter"]);
    const log = git(folder, ["log", "--format=%s", "-L", ':front.left.disc "Brake:build.cotter']);
    expect(log).toMatch(/^Tighter\n/);
    expect(log).toContain("-  limit: thickness min 8.4 mm");
    expect(log).not.toContain("+joint");
  });

  it("keeps two days that were written on two branches, in the order of their dates", async () => {
    const later = "\nday 2026-05-09 1 h\n  cleaned: front.left.disc\n";
    const earlier = "\nday 2026-05-06 1 h\n  cleaned: front.left.hub\n";
    const before = readFileSync(file, "utf8");
    git(folder, ["checkout", "--quiet", "-b", "shed"]);
    write((text) => text + earlier);
    git(folder, ["commit", "--quiet", "--no-verify", "-am", "In the shed"]);
    git(
      folder,
      ["checkout", "--quiet", "main"].map((word) => (word === "main" ? "-" : word)),
    );
    write((text) => text + later);
    git(folder, ["commit", "--quiet", "--no-verify", "-am", "At home"]);
    git(folder, ["merge", "--quiet", "--no-edit", "shed"]);
    expect(readFileSync(file, "utf8")).toBe(before + earlier + later);
    expect((await cotter(["check", "--on", "2026-05-10"], folder)).status).toBe(0);
  });

  it("leaves to a person what was changed on both", () => {
    git(folder, ["checkout", "--quiet", "-b", "other"]);
    write((text) => text.replace("better than it sounded", "worse than it sounded"));
    git(folder, ["commit", "--quiet", "--no-verify", "-am", "Worse"]);
    git(folder, ["checkout", "--quiet", "-"]);
    write((text) => text.replace("better than it sounded", "as bad as it sounded"));
    git(folder, ["commit", "--quiet", "--no-verify", "-am", "As bad"]);
    expect(() => git(folder, ["merge", "--quiet", "other"])).toThrow();
    expect(readFileSync(file, "utf8")).toMatch(/^<{7} ours\n.*as bad.*\n={7}\n.*worse.*\n>{7} theirs$/m);
    expect(git(folder, ["status", "--porcelain"])).toBe("UU build.cotter\n");
    git(folder, ["merge", "--abort"]);
  });

  it("refuses to commit an error in the log, and says how to do it all the same", () => {
    write((text) => text.replace("min 8.7 mm", "mni 8.7 mm"));
    const refused = committing(folder, "A slip");
    expect(refused.status).toBe(1);
    expect(refused.said).toContain("unreadable-value");
    expect(refused.said).toContain("git commit --no-verify");
    expect(committing(folder, "A slip", "--no-verify").status).toBe(0);
  });
});

describe("cotter start --git for a build that is there", () => {
  const files = { "build.cotter": 'vehicle "Marsh Kestrel"\n  past: known\n' };

  it("sets up what a clone has not, and asks nothing twice", async () => {
    const folder = folderWith(files);
    git(folder, ["init", "--quiet"]);
    const first = await cotter(["start", "--git", "--hook"], folder);
    expect([first.status, first.out.split("\n")[0]]).toEqual([
      0,
      "In this folder: .gitattributes, .git/hooks/pre-commit",
    ]);
    expect(git(folder, ["check-attr", "merge", "build.cotter"])).toBe("build.cotter: merge: cotter\n");
    expect((await cotter(["start", "--git", "--hook"], folder)).status).toBe(0);
  });

  it("in a second working tree, and below the root: the hook of the first checks that build", async () => {
    const folder = folderWith({ "kestrel/build.cotter": 'vehicle "Marsh Kestrel"\n  past: known\n' });
    git(folder, ["init", "--quiet"]);
    asJr(folder);
    git(folder, ["add", "."]);
    git(folder, ["commit", "--quiet", "-m", "The log so far"]);
    const second = path.join(mkdtempSync(path.join(tmpdir(), "cotter-tree-")), "second");
    git(folder, ["worktree", "add", "--quiet", second]);
    const build = path.join(second, "kestrel");
    const { status, err } = await bundledCotter(["start", "--git", "--hook"], build);
    expect([status, err]).toEqual([0, ""]);
    writeFileSync(path.join(build, "build.cotter"), 'vehicle "Marsh Kestrel"\n  past: konwn\n');
    const refused = committing(second, "A slip");
    expect(refused.status).toBe(1);
    expect(refused.said).toContain("The log has errors");
    expect(committing(second, "A slip", "--no-verify").status).toBe(0);
  });

  it("keeps a hook and attributes that are there", async () => {
    const folder = folderWith({ ...files, ".gitattributes": "*.png binary\n" });
    git(folder, ["init", "--quiet"]);
    const { status, err } = await cotter(["start", "--git"], folder);
    expect(status).toBe(2);
    expect(err).toContain("*.cotter text diff=cotter merge=cotter");
    expect(readFileSync(path.join(folder, ".gitattributes"), "utf8")).toBe("*.png binary\n");
    writeFileSync(path.join(folder, ".gitattributes"), "*.cotter text diff=cotter merge=cotter\n");
    const hook = path.join(folder, ".git", "hooks", "pre-commit");
    writeFileSync(hook, "#!/bin/sh\nexit 0\n");
    chmodSync(hook, 0o755);
    expect((await cotter(["start", "--git", "--hook"], folder)).err).toContain(
      "is there already and was kept",
    );
    expect(readFileSync(hook, "utf8")).toBe("#!/bin/sh\nexit 0\n");
    expect(existsSync(path.join(folder, ".git", "config"))).toBe(true);
    expect(git(folder, ["config", "--local", "--list"])).not.toContain("merge.cotter");
  });
});

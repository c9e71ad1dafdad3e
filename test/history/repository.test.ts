/** What git is asked, what it is never asked, and what is said where it cannot answer. */
import { chmodSync, existsSync, mkdirSync, mkdtempSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { pathToFileURL } from "node:url";
import { beforeAll, describe, expect, it, vi } from "vitest";
import { compareRevisions } from "../../server/history/compare-revisions.ts";
import { isGitFault, sayGitFault } from "../../server/history/git-fault.ts";
import { historyOfThing } from "../../server/history/history-of-thing.ts";
import { Repository } from "../../server/history/repository.ts";
import { revisionFault } from "../../server/history/revision.ts";
import { git, scriptedRepository } from "./scripted-repository.ts";
import { thirtyCommits } from "./thirty-commits.ts";
import { watchGit } from "./watched-git.ts";
import { openWorking } from "./working-build.ts";

let folder = "";
beforeAll(() => {
  folder = scriptedRepository(thirtyCommits());
});

async function refused(where: string, from: string, to?: string): Promise<string> {
  const answer = await compareRevisions(await openWorking(where), from, to);
  return isGitFault(answer) ? sayGitFault(answer) : "answered";
}

describe("a revision", () => {
  it.each([
    ["--output=/tmp/x", "begins like an option"],
    ["-h", "begins like an option"],
    ["HEAD~3..HEAD", "several commits"],
    ["^HEAD", "several commits"],
    ["HEAD^@", "several commits"],
    ["HEAD^!", "several commits"],
    ["HEAD:build.cotter", "names a file"],
    [":/October", "names a file"],
    ["HEAD\n--all", "control characters"],
    ["\u001b[31mHEAD", "control characters"],
    ["", "write a commit"],
    ["a".repeat(300), "too long"],
  ])("%j is refused before git sees it", (revision, why) => {
    const fault = revisionFault(revision);
    expect(fault && sayGitFault(fault)).toContain(why);
  });

  it.each(["HEAD", "main", "HEAD~2", "HEAD^2", "main@{0}", "feature/left-front", "v1.0", "2026-05-02"])(
    "%s may be asked for",
    (revision) => {
      expect(revisionFault(revision)).toBeUndefined();
    },
  );

  it("that nobody knows is said to be unknown, whatever a shell would make of it", async () => {
    expect(await refused(folder, "$(touch pwned)")).toContain("git knows no revision");
    expect(await refused(folder, "HEAD; touch pwned")).toContain("git knows no revision");
    expect(existsSync(path.join(folder, "pwned"))).toBe(false);
  });

  it("may be a day: the last commit by its end, on the branch that is checked out", async () => {
    const repository = await Repository.around(folder);
    if (isGitFault(repository)) throw new Error(sayGitFault(repository));
    expect(await repository.commit("2026-05-10")).toMatchObject({ day: "2026-05-10", author: "JR" });
    expect(await repository.commit("2030-01-01")).toMatchObject({ day: "2026-05-30" });
    // What KT wrote in the shed was taken over on the 28th.
    expect(await repository.commit("2026-05-24")).toMatchObject({ day: "2026-05-20", author: "JR" });
    expect(await refused(folder, "2020-01-01")).toBe(
      "nothing had been committed by 2020-01-01: the first commit is of 2026-05-01",
    );
  });

  it("may be a day by the clock of who wrote, wherever it is read", async () => {
    const early = scriptedRepository([
      { day: "2026-05-02", files: { "build.cotter": 'vehicle "Kestrel"\n' } },
    ]);
    const night = {
      GIT_AUTHOR_DATE: "2026-05-09T01:00:00+13:00",
      GIT_COMMITTER_DATE: "2026-05-09T01:00:00+13:00",
    };
    git(early, ["commit", "--quiet", "--allow-empty", "--no-verify", "-m", "At night"], "", night);
    const repository = await Repository.around(early);
    if (isGitFault(repository)) throw new Error(sayGitFault(repository));
    expect(await repository.commit("2026-05-08")).toMatchObject({ day: "2026-05-02" });
    expect(await repository.commit("2026-05-09")).toMatchObject({ subject: "At night" });
  });
});

describe("a build", () => {
  const text = 'vehicle "Marsh Kestrel"\n';

  it("in no repository", async () => {
    const outside = mkdtempSync(path.join(tmpdir(), "cotter-outside-"));
    writeFileSync(path.join(outside, "build.cotter"), text);
    expect(await refused(outside, "HEAD")).toContain("in no git repository");
  });

  it("in a repository without a commit", async () => {
    const empty = scriptedRepository([]);
    writeFileSync(path.join(empty, "build.cotter"), text);
    expect(await refused(empty, "HEAD")).toContain("nothing has been committed yet");
  });

  it("that has not been committed", async () => {
    const untracked = scriptedRepository([{ day: "2026-05-02", files: { "readme.txt": "A barn.\n" } }]);
    writeFileSync(path.join(untracked, "build.cotter"), `${text}part hub "Hub"\n`);
    const comparison = await compareRevisions(await openWorking(untracked), "HEAD", undefined);
    expect("changes" in comparison && comparison.changes[0]).toMatchObject({ kind: "added", ref: "hub" });
    const history = await historyOfThing(await openWorking(untracked), "hub");
    expect("fault" in history ? sayGitFault(history) : "answered").toContain("has been committed");
  });

  it("in a folder with a space, an umlaut and a quotation mark in its name", async () => {
    const name = 'Käfer "der rote"';
    const odd = scriptedRepository([
      { day: "2026-05-02", files: { [`${name}/build.cotter`]: `${text}part hub "Hub"\n` } },
      { day: "2026-05-03", files: { [`${name}/Tagebuch März.cotter`]: "day 2026-05-03\n  removed: hub\n" } },
    ]);
    const working = await openWorking(path.join(odd, name));
    const comparison = await compareRevisions(working, "HEAD~1", undefined);
    if (isGitFault(comparison)) throw new Error(sayGitFault(comparison));
    expect(comparison.changes.map(({ kind, ref }) => `${kind} ${ref}`)).toContain("state-changed hub");
    const history = await historyOfThing(working, "hub");
    expect("entries" in history && history.entries.map(({ after }) => after?.word)).toEqual([
      "part",
      "removed",
    ]);
  });

  it("that was in another folder then is found where git knows of the move", async () => {
    const moved = scriptedRepository([
      { day: "2026-05-02", files: { "old/build.cotter": text } },
      {
        day: "2026-05-03",
        files: { "old/build.cotter": null, "kestrel/build.cotter": `${text}part hub "Hub"\n` },
      },
    ]);
    const comparison = await compareRevisions(
      await openWorking(path.join(moved, "kestrel")),
      "HEAD~1",
      "HEAD",
    );
    if (isGitFault(comparison)) throw new Error(sayGitFault(comparison));
    expect(comparison.changes).toMatchObject([{ kind: "added", ref: "hub" }]);
  });

  it("in a second working tree", async () => {
    const second = path.join(mkdtempSync(path.join(tmpdir(), "cotter-tree-")), "second");
    git(folder, ["worktree", "add", "--quiet", "--detach", second, "HEAD~5"]);
    const comparison = await compareRevisions(await openWorking(second), "main", undefined);
    if (isGitFault(comparison)) throw new Error(sayGitFault(comparison));
    expect(comparison.changes.some(({ kind }) => kind === "day-removed")).toBe(true);
    const history = await historyOfThing(await openWorking(second), "front.left.hub");
    expect("entries" in history && history.entries.at(-1)?.commit?.day).toBe("2026-05-25");
  });

  it("in a repository that has no files of its own", async () => {
    const bare = mkdtempSync(path.join(tmpdir(), "cotter-bare-"));
    git(bare, ["init", "--quiet", "--bare"]);
    writeFileSync(path.join(bare, "build.cotter"), text);
    expect(await refused(bare, "HEAD")).toContain("in no git repository");
  });

  it("in a repository of another user, which git does not trust", async () => {
    // As git says it; the tests need not be allowed to give a folder away.
    const watched = watchGit(
      "echo \"fatal: detected dubious ownership in repository at '/the shed'\" >&2; exit 128",
    );
    try {
      expect(await refused(path.join(folder, "log"), "HEAD")).toMatch(
        /the repository \/the shed, since it belongs to another user: .* safe\.directory "\/the shed"$/,
      );
      const history = await historyOfThing(await openWorking(folder), "front.left.hub");
      expect(history).toMatchObject({ fault: "not yours", folder: "/the shed" });
    } finally {
      watched.putBack();
    }
  });

  it("in a shallow clone: says how far back it goes", async () => {
    const shallow = path.join(mkdtempSync(path.join(tmpdir(), "cotter-shallow-")), "clone");
    git(folder, ["clone", "--quiet", "--depth", "1", pathToFileURL(folder).href, shallow]);
    expect(await refused(shallow, "HEAD~1")).toContain("shallow clone, which goes back to 2026-05-30 only");
    const history = await historyOfThing(await openWorking(shallow), "front.left.disc");
    expect("since" in history && history.since).toBe("2026-05-30");
  });
});

describe("git", () => {
  it("that is not there is said, not taken for an unknown revision", async () => {
    const repository = await Repository.around(folder);
    if (isGitFault(repository)) throw new Error(sayGitFault(repository));
    const usual = process.env.PATH;
    process.env.PATH = mkdtempSync(path.join(tmpdir(), "cotter-no-git-"));
    try {
      expect(await repository.commit("HEAD")).toEqual({ fault: "no git" });
      expect(await Repository.around(folder)).toEqual({ fault: "no git" });
    } finally {
      process.env.PATH = usual;
    }
  });

  it("is ended when what it was asked for is called off", async () => {
    const off = new AbortController();
    const repository = await Repository.around(folder, off.signal);
    if (isGitFault(repository)) throw new Error(sayGitFault(repository));
    const watched = watchGit("exec sleep 1000");
    try {
      const answer = repository.commit("HEAD");
      await vi.waitFor(() => expect(watched.calls()).toHaveLength(1));
      off.abort();
      expect(await answer).toMatchObject({ fault: "failed" });
    } finally {
      watched.putBack();
    }
  });
});

describe("a repository that is not to be trusted", () => {
  it("starts nothing: no hook, watcher, filter, converter, pager or signature check of its own", async () => {
    const hostile = scriptedRepository(thirtyCommits().slice(0, 4));
    const trace = path.join(hostile, ".git", "started");
    const program = path.join(hostile, ".git", "evil.sh");
    writeFileSync(program, `#!/bin/sh\necho "$0 $*" >> '${trace}'\ncat\n`);
    chmodSync(program, 0o755);
    for (const key of [
      "core.fsmonitor",
      "core.pager",
      "pager.log",
      "diff.external",
      "diff.evil.command",
      "diff.evil.textconv",
      "filter.evil.clean",
      "filter.evil.smudge",
      "filter.evil.process",
      "gpg.program",
      "core.sshCommand",
      "core.editor",
      "credential.helper",
    ])
      git(hostile, ["config", key, program]);
    git(hostile, ["config", "log.showSignature", "true"]);
    git(hostile, ["config", "alias.log", `!${program}`]);
    mkdirSync(path.join(hostile, "hooks"));
    git(hostile, ["config", "core.hooksPath", program]);
    writeFileSync(path.join(hostile, ".gitattributes"), "*.cotter diff=evil filter=evil\n");
    const working = await openWorking(hostile);
    expect(isGitFault(await compareRevisions(working, "HEAD~1", undefined))).toBe(false);
    expect(isGitFault(await compareRevisions(working, "HEAD~2", "HEAD"))).toBe(false);
    expect("entries" in (await historyOfThing(working, "front.left.hub"))).toBe(true);
    expect(existsSync(trace)).toBe(false);
  });

  it("is not misled by variables that another git has set", async () => {
    const other = scriptedRepository([{ day: "2026-05-02", files: { "readme.txt": "Another.\n" } }]);
    process.env.GIT_DIR = path.join(other, ".git");
    process.env.GIT_INDEX_FILE = path.join(other, "index");
    try {
      const comparison = await compareRevisions(await openWorking(folder), "HEAD~1", "HEAD");
      expect(isGitFault(comparison)).toBe(false);
    } finally {
      delete process.env.GIT_DIR;
      delete process.env.GIT_INDEX_FILE;
    }
  });
});

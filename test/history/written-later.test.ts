/** What a hover can say of a fact: that it was written later than its day. */
import { chmodSync, existsSync, mkdtempSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { beforeAll, describe, expect, it, vi } from "vitest";
import { BuildRecord } from "../../server/history/build-record.ts";
import { WrittenLaterLookup } from "../../server/history/written-later.ts";
import type { Host } from "../../server/language-server/host.ts";
import { Records } from "../../server/language-server/records.ts";
import type { IsoDate } from "../../server/quantities/dates.ts";
import { git, scriptedRepository } from "./scripted-repository.ts";
import { watchGit } from "./watched-git.ts";

const DAY = "day 2026-05-02 1 h\n  removed: hub\n";
const ADDED = '  measured: hub bore 25.02 mm "from memory"\n';

let folder = "";
let lookup: WrittenLaterLookup;
beforeAll(() => {
  folder = scriptedRepository([
    { day: "2026-05-02", files: { "shed/build.cotter": 'vehicle "Kestrel"\n', "shed/diary.cotter": DAY } },
    { day: "2026-05-20", author: "KT", files: { "shed/diary.cotter": DAY + ADDED } },
  ]);
  lookup = new WrittenLaterLookup(path.join(folder, "shed"));
});

const fact = (line: string) => ({ file: "diary.cotter", day: "2026-05-02" as IsoDate, line });

describe("a fact of a day", () => {
  it("that was written later: when, by whom, and by how many days", async () => {
    expect(await lookup.of(fact(ADDED))).toMatchObject({
      written: "2026-05-20",
      author: "KT",
      daysLater: 18,
    });
  });

  it("that was written on its day, or not committed yet: nothing", async () => {
    expect(await lookup.of(fact("  removed: hub"))).toBeUndefined();
    expect(await lookup.of(fact("  cleaned: hub"))).toBeUndefined();
  });

  it("that moved to another file with its day keeps the commit that wrote it", async () => {
    git(folder, ["mv", "shed/diary.cotter", "shed/may.cotter"]);
    git(folder, ["commit", "--quiet", "--no-verify", "-m", "Moved"]);
    expect(await lookup.of({ ...fact("  removed: hub"), file: "may.cotter" })).toBeUndefined();
    expect(await lookup.of({ ...fact(ADDED), file: "may.cotter" })).toMatchObject({ author: "KT" });
  });

  it("of a file that was not committed yet: nothing, and nothing is wrong", async () => {
    expect(await lookup.lookAt("june.cotter")).toBeUndefined();
    expect(await lookup.of({ ...fact(ADDED), file: "june.cotter" })).toBeUndefined();
  });

  it("outside of a repository: nothing", async () => {
    const outside = mkdtempSync(path.join(tmpdir(), "cotter-outside-"));
    expect(await new WrittenLaterLookup(outside).of(fact(ADDED))).toBeUndefined();
  });
});

describe("git", () => {
  it("is started once for each look, while there is no other commit", async () => {
    const own = scriptedRepository([{ day: "2026-05-20", files: { "diary.cotter": DAY } }]);
    const looking = new WrittenLaterLookup(own);
    const watched = watchGit();
    try {
      await looking.lookAt("diary.cotter");
      expect(watched.calls()).toHaveLength(2);
      await looking.lookAt("diary.cotter");
      await looking.lookAt("diary.cotter");
      expect(watched.calls()).toHaveLength(2);
      git(own, ["commit", "--quiet", "--allow-empty", "--no-verify", "-m", "Another"]);
      watched.calls();
      await looking.lookAt("diary.cotter");
      expect(watched.calls().map((call) => /\bblame\b/.test(call))).toEqual([false, true]);
    } finally {
      watched.putBack();
    }
  });

  it("that cannot answer is said, once for a folder, and asked again", async () => {
    const own = scriptedRepository([{ day: "2026-05-20", files: { "diary.cotter": DAY } }]);
    git(own, ["config", "blame.ignoreRevsFile", "no-such-file"]);
    const said: unknown[] = [];
    const record = new BuildRecord(own);
    const host = { recordOf: () => Promise.resolve(record) } as Partial<Host> as Host;
    const records = new Records(host, true, (words) => said.push(words));
    const hover = () => records.writtenLater(own, fact("  removed: hub"));
    expect(hover()).toBeUndefined();
    await vi.waitFor(() => expect(said).toHaveLength(1));
    expect(said[0]).toMatch(
      /^git could not answer: .*no-such-file.* \(the setting blame\.ignoreRevsFile names it\)$/,
    );
    expect(await record.writtenLater.lookAt("diary.cotter")).toMatchObject({ fault: "failed" });
    git(own, ["config", "--unset", "blame.ignoreRevsFile"]);
    await vi.waitFor(() => expect(hover()).toMatchObject({ daysLater: 18 }));
    expect(said).toHaveLength(1);
  });
});

it("a repository's own text converter is not started", async () => {
  const hostile = scriptedRepository([{ day: "2026-05-20", files: { "diary.cotter": DAY } }]);
  const trace = path.join(hostile, ".git", "started");
  const program = path.join(hostile, ".git", "evil.sh");
  writeFileSync(program, `#!/bin/sh\necho "$0 $*" >> '${trace}'\ncat "$1"\n`);
  chmodSync(program, 0o755);
  git(hostile, ["config", "diff.evil.textconv", program]);
  git(hostile, ["config", "filter.evil.clean", program]);
  writeFileSync(path.join(hostile, ".gitattributes"), "*.cotter diff=evil filter=evil\n");
  expect(await new WrittenLaterLookup(hostile).of(fact("  removed: hub"))).toMatchObject({ daysLater: 18 });
  expect(existsSync(trace)).toBe(false);
});

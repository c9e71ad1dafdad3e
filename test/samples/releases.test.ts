import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { Document } from "../../grammar/document.ts";
import type { Build } from "../../server/build/build.ts";
import { readBuild } from "../../server/build/build.ts";
import type { IsoDate } from "../../server/quantities/dates.ts";
import { holdAt, openFor } from "../build/open-items.ts";

function buildIn(sample: string): Build {
  const files = readdirSync(sample, { recursive: true, encoding: "utf8" })
    .filter((path) => path.endsWith(".cotter"))
    .map((path) => ({
      path: path.replaceAll("\\", "/"),
      document: Document.read(readFileSync(join(sample, path), "utf8")),
    }));
  return readBuild(files, { clock: "2026-12-01" as IsoDate });
}

describe("the releases of samples/roadster", () => {
  const build = buildIn("samples/roadster");

  it.each([
    ["frame_ok", "2026-10-08"],
    ["fire_up", "2026-11-21"],
  ])("%s holds", (name, date) => {
    expect(holdAt(build, name)).toMatchObject({ released: { date }, lapsed: undefined, refused: undefined });
    expect(openFor(build, name)).toEqual([]);
  });

  it("leave the brakes shut: a line that was opened, a mark that was forgotten, a job to do", () => {
    expect(openFor(build, "brakes_ok")).toEqual([
      "system-not-bled brakes.front_circuit: not bled since 2026-11-19",
      "joint-unsecured steering.column_pinch: not secured: no witness mark",
      "job-not-done bleed_front: the job is not begun",
    ]);
  });

  it("count the unreadable lines of the last day for the hold points over the whole car", () => {
    const unread = openFor(build, "first_run").filter((item) => item.startsWith("line-unread"));
    expect(unread).toEqual([
      "line-unread this line could not be read: torqued: exhaust.flange 24 nm",
      "line-unread this line could not be read: greesed: rear.*.driveshaft",
    ]);
  });
});

describe("the release of samples/trials", () => {
  it("holds through what fell due after the first hour, and leaves the next one ready", () => {
    const build = buildIn("samples/trials");
    expect(holdAt(build, "ride")).toMatchObject({ released: { date: "2026-10-24" }, lapsed: undefined });
    expect(openFor(build, "gritstone")).toEqual([]);
  });
});

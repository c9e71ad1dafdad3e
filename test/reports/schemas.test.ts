/**
 * The stable machine form against its published schemas, by a general-purpose validator (ajv, JSON Schema draft 2020-12).
 */
import { readdirSync, readFileSync } from "node:fs";
import type { ValidateFunction } from "ajv/dist/2020.js";
import { Ajv2020 } from "ajv/dist/2020.js";
import { describe, expect, it } from "vitest";
import type { Build } from "../../server/build/build.ts";
import { dimensionsOf, donorsOf } from "../../server/build/identification.ts";
import { calculate, calculationObject } from "../../server/expressions/calculation.ts";
import { compareBuilds } from "../../server/history/changes/compare-builds.ts";
import { changesReport } from "../../server/history/changes-report.ts";
import { historyReport } from "../../server/history/history-report.ts";
import { mergeReport } from "../../server/history/merge/merge-logs.ts";
import { Renames } from "../../server/history/renames.ts";
import { startReport } from "../../server/history/start/start-report.ts";
import { planOf } from "../../server/plan/plan.ts";
import { bookReport } from "../../server/reports/book-report.ts";
import { checkReport } from "../../server/reports/check.ts";
import { costsReport } from "../../server/reports/costs.ts";
import { dimensionsReport, identifyReport } from "../../server/reports/identify.ts";
import { jointsReport } from "../../server/reports/joints.ts";
import { livesReport } from "../../server/reports/lives.ts";
import { orderReport } from "../../server/reports/order.ts";
import { outstandingReport } from "../../server/reports/outstanding.ts";
import { partsReport } from "../../server/reports/parts.ts";
import { settingsReport } from "../../server/reports/settings.ts";
import { timelineReport } from "../../server/reports/timeline.ts";
import { complaintsOf } from "../../server/rules/complaints.ts";
import { identify } from "../../server/trade/identification.ts";
import { builds } from "./sample-builds.ts";

const FOLDER = "docs/schema";
const names = readdirSync(FOLDER).map((file) => file.replace(/\.json$/, ""));
const ajv = new Ajv2020({ strict: true, allowUnionTypes: true });
for (const name of names) ajv.addSchema(JSON.parse(readFileSync(`${FOLDER}/${name}.json`, "utf8")));

function validator(name: string): ValidateFunction {
  const found = ajv.getSchema(`${name}.json`);
  if (found === undefined) throw new Error(`there is no schema ${name}`);
  return found;
}

/** What a machine reads: the report after its way through JSON. */
function printed(report: unknown): unknown {
  return JSON.parse(JSON.stringify(report));
}

function faultsOf(name: string, report: unknown): unknown {
  const validate = validator(name);
  validate(printed(report));
  return validate.errors ?? [];
}

const reports: Readonly<Record<string, (build: Build) => unknown>> = {
  check: (build) => checkReport(complaintsOf(build).complaints),
  order: (build) => orderReport(build, planOf(build)),
  timeline: (build) => timelineReport(build, planOf(build)),
  outstanding: (build) => outstandingReport(build, complaintsOf(build).waived),
  joints: jointsReport,
  parts: (build) => partsReport(build, planOf(build)),
  lives: livesReport,
  costs: costsReport,
  settings: settingsReport,
  book: (build) =>
    bookReport(build, new Map([["photos/none.png", { is: "missing", why: "there is no such file" }]]), {
      page: "<!doctype html>",
    }),
};

const CALCULATIONS: readonly string[] = [
  "40 lbf.ft in N.m",
  "2 + 3",
  "62 GBP * 2",
  'limits_of("52 H7")',
  '"as text"',
];

describe.each(Object.entries(builds))("of %s", (_, read) => {
  const build = read();
  it.each(Object.keys(reports))("the report of cotter %s follows its schema", (name) => {
    expect(faultsOf(name, reports[name]?.(build))).toEqual([]);
  });

  it("what can be identified follows its schema", () => {
    const donors = donorsOf(build.standing.gathered);
    for (const { node, item } of build.standing.parts.values()) {
      const dimensions = dimensionsOf(build.standing, node, item);
      if (dimensions.length === 0) continue;
      const identification = identify(
        dimensions.map(({ given }) => given),
        donors,
      );
      expect(faultsOf("identify", identifyReport({ node, dimensions, identification }))).toEqual([]);
    }
  });
});

describe("what needs no build", () => {
  it.each(CALCULATIONS)("cotter calc %s follows its schema", (text) => {
    const calculation = calculate(text);
    expect("fault" in calculation ? calculation.fault.message : "").toBe("");
    expect(faultsOf("calc", calculationObject(calculation))).toEqual([]);
  });

  it.each(["2 mm + 3 kg", "2 +"])("cotter calc %s is a failure that follows its schema", (text) => {
    expect(faultsOf("failure", calculationObject(calculate(text)))).toEqual([]);
  });

  it("the dimensions that parts can be told by follow their schema", () => {
    expect(faultsOf("identify-dimensions", dimensionsReport())).toEqual([]);
  });
});

describe("no key is left out", () => {
  const roadster = builds["the roadster"]?.() as Build;
  const samples: Readonly<Record<string, readonly unknown[]>> = {
    ...Object.fromEntries(Object.entries(reports).map(([name, report]) => [name, [report(roadster)]])),
    calc: CALCULATIONS.map((text) => calculationObject(calculate(text))),
    changes: [changesOf(builds["a fresh build"]?.() as Build, roadster)],
    history: [HISTORY],
    start: [
      startReport("/home/jr/kestrel", ["build.cotter"], undefined),
      startReport("/home/jr/kestrel", [], { made: true, files: [] }),
    ],
    "merge-file": [mergeReport({ text: "", conflicts: 1 })],
    failure: [calculationObject(calculate("2 mm + 3 kg")), { schema: "cotter/failure/1", message: "no" }],
    identify: [identified(roadster)],
    "identify-dimensions": [dimensionsReport()],
  };

  it("there is a sample for every schema", () => {
    expect(Object.keys(samples).sort()).toEqual(names.filter((name) => name !== "shared").sort());
  });

  it.each(Object.keys(samples))("the schema of %s rejects a report with any key left out", (name) => {
    const validate = validator(name);
    for (const sample of samples[name] ?? []) {
      const report = printed(sample);
      expect(validate(report)).toBe(true);
      const accepted = objectsOfEachShape(report).flatMap(([path, object]) =>
        Object.keys(object)
          .filter((key) => acceptsWithout(validate, report, object, key))
          .map((key) => `${path}.${key}`),
      );
      expect(accepted).toEqual([]);
    }
  });

  it.each(Object.keys(samples))("the schema of %s asks for its own name and number", (name) => {
    const [sample] = samples[name] ?? [];
    const another = { ...(printed(sample) as object), schema: `cotter/${name}/2` };
    expect(validator(name)(another)).toBe(false);
  });
});

const COMMIT = {
  id: "1a323440be81d7dee52f54b01e452a1ad9de1244",
  short: "1a323440b",
  parents: [],
  author: "JR",
  day: "2026-10-31",
  subject: "October",
  logs: [],
};

function changesOf(before: Build, after: Build): unknown {
  return changesReport({
    from: { revision: "HEAD", commit: COMMIT, prefix: "", hasBuild: true },
    to: { revision: undefined, commit: undefined, prefix: "", hasBuild: true },
    before,
    after,
    changes: compareBuilds(before, after),
    renames: Renames.none,
    since: undefined,
  });
}

const STATEMENT = {
  day: "2026-10-17",
  word: "measured",
  name: "runout",
  text: "runout 0.05 mm",
  line: 1,
  key: "",
  path: "diary.cotter",
  lineInFile: 12,
};

const HISTORY = historyReport({
  subject: {
    ref: "front.disc",
    what: "part",
    title: "Disc",
    characteristic: undefined,
    copyOf: undefined,
  },
  earlierNames: ["front.rotor"],
  entries: [
    { is: "written", commit: COMMIT, before: undefined, after: STATEMENT, daysLater: 14 },
    { is: "taken out", commit: undefined, before: STATEMENT, after: undefined, daysLater: undefined },
  ],
  commits: 1,
  head: COMMIT,
  prefix: "",
  since: undefined,
});

function identified(build: Build): unknown {
  const donors = donorsOf(build.standing.gathered);
  for (const { node, item } of build.standing.parts.values()) {
    const dimensions = dimensionsOf(build.standing, node, item);
    if (dimensions.length < 2) continue;
    const given = dimensions.map((known) => known.given);
    const identification = identify(given, donors);
    if (identification.tellApart.length === 0) continue;
    return identifyReport({ node, dimensions, identification });
  }
  throw new Error("no part of the roadster has dimensions that several things fit");
}

type JsonObject = Record<string, unknown>;

function acceptsWithout(
  validate: ValidateFunction,
  report: unknown,
  object: JsonObject,
  key: string,
): boolean {
  const value = object[key];
  delete object[key];
  const accepted = validate(report);
  object[key] = value;
  return accepted;
}

/** The first object at each path, places in lists left out of the path. */
function objectsOfEachShape(report: unknown): readonly (readonly [string, JsonObject])[] {
  const found = new Map<string, JsonObject>();
  const visit = (value: unknown, path: string): void => {
    if (Array.isArray(value)) for (const each of value) visit(each, `${path}[]`);
    else if (typeof value === "object" && value !== null) {
      if (!found.has(path)) found.set(path, value as JsonObject);
      for (const [key, each] of Object.entries(value)) visit(each, `${path}.${key}`);
    }
  };
  visit(report, "");
  return [...found];
}

/** The plan of short logs: what waits for what. Worked out by hand; the week has 6 h on Saturday and 4 h on Sunday. */
import { describe, expect, test } from "vitest";
import { planOf } from "../../server/plan/plan.ts";
import { readLogs } from "../rules/read-log.ts";
import { momentText } from "./planned.ts";

/** What each job and hold point that is open waits for; today is Saturday 30 May 2026. */
function waits(log: string): Readonly<Record<string, readonly string[]>> {
  return Object.fromEntries(planned(log).activities.map(({ id, after }) => [id, after]));
}

function planned(log: string) {
  const text = `vehicle "Example"\n  past: known\n  today: 2026-05-30\n\n${log}`;
  return planOf(readLogs([{ path: "log.cotter", text }]));
}

const JOBS = `part brakes "Brakes"
part body "Body"

job bleed "Bleed"
  on: brakes
  takes: 2 h

job panels "Panels"
  on: body
  takes: 7 h
`;

describe("a hold point that asks for jobs", () => {
  test("waits for every open job on what it covers", () => {
    expect(waits(`${JOBS}\nhold run "Run"\n`)).toMatchObject({ run: ["bleed", "panels"] });
    expect(waits(`${JOBS}\nhold ok "Brakes"\n  covers: brakes\n  needs: jobs\n`)).toMatchObject({
      ok: ["bleed"],
    });
  });

  test("does not wait for jobs where it asks for other things alone", () => {
    expect(waits(`${JOBS}\nhold run "Run"\n  needs: parts, joints\n`)).toMatchObject({ run: [] });
  });

  test("does not wait for a job that is done", () => {
    const log = `${JOBS}\nhold run "Run"\n\nday 2026-05-02\n  done: bleed\n`;
    expect(waits(log)).toEqual({ panels: [], run: ["panels"] });
  });

  test("does not wait for a job that comes after it, or that it or a later one stops", () => {
    const log = `${JOBS}
job wash "Wash"
  on: brakes
  after: run

job drive "Drive"
  on: brakes

job report "Report"
  on: brakes
  after: drive

hold run "Run"
  stops: bleed

hold show "Show"
  after: run
  needs: parts
  stops: drive
`;
    expect(waits(log)).toEqual({
      bleed: ["run"],
      panels: [],
      wash: ["run"],
      drive: ["show"],
      report: ["drive"],
      run: ["panels"],
      show: ["run"],
    });
  });

  test("makes no circle of two hold points of which each asks for the job behind the other", () => {
    const log = `part brakes "Brakes"

job first "First"
  after: one

job second "Second"
  after: two

hold one "One"

hold two "Two"
`;
    expect(waits(log)).toEqual({ first: ["one"], second: ["two"], one: ["second"], two: [] });
    expect(planned(log).levelled.network.circles).toEqual([]);
  });

  test("is passed, and its parts are needed, by the end of those jobs", () => {
    const log = `${JOBS}
part clips "Clips"
  price: 1.00 GBP

job trim "Trim"
  on: body
  takes: 3 h
  needs: 4 x clips

hold run "Run"
  planned: 2026-06-06
`;
    const { levelled, latest } = planned(log);
    // 12 h of work for one pair of hands: Saturday 6 h, Sunday 4 h, and 2 h on the Saturday after.
    expect(momentText(levelled.levelled.get("run")?.finish)).toBe("2026-06-06 2");
    // Saturday the 6th begins with hour 10, and 3 h before that is hour 7, on Sunday the 31st (6..10).
    expect(latest.get("trim")).toEqual({ date: "2026-05-31", hold: "run" });
  });
});

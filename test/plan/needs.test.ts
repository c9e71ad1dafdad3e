/** What asks for parts, told as short logs. The hand count of each line stands beside it. */
import { describe, expect, test } from "vitest";
import { lineOf } from "../../server/build/source.ts";
import { needsOf } from "../../server/plan/needs.ts";
import { readLogs } from "../rules/read-log.ts";

/** What is needed of each part, why, and the line that says so; the vehicle's block is the first five lines. */
function needed(log: string): readonly string[] {
  const text = `vehicle "Example"\n  past: known\n  today: 2026-06-01\n\n\n${log}`;
  return needsOf(readLogs([{ path: "log.cotter", text }])).flatMap(({ node, demand, toOrder }) =>
    demand.kinds.flatMap(({ kind, count, askers }) =>
      askers.map(
        ({ why }) =>
          `${node.path} ${kind} ${count}, to order ${toOrder}: ${why.text} (line ${lineOf(why.place)})`,
      ),
    ),
  );
}

const EXTINGUISHER = `part extinguisher "Extinguisher"
  expires: 2026-07-31
`;

const RUN = `
hold run "First run"
  planned: 2026-08-01
`;

describe("a life that ends before the next planned hold point asks for the part", () => {
  test("by the date on it, one day too early", () => {
    expect(needed(`${EXTINGUISHER}${RUN}`)).toEqual([
      "extinguisher life 1, to order 1: life ends on 2026-07-31, before run, planned for 2026-08-01 (line 7)",
    ]);
  });

  test("not when it lasts through that day", () => {
    expect(needed(`${EXTINGUISHER.replace("07-31", "08-01")}${RUN}`)).toEqual([]);
  });

  test("all of its count, by its age", () => {
    const log = `part belts "Belts"
  count: 2
  life: 5 year from made
  made: 2021-07-15
${RUN}`;
    expect(needed(log)).toEqual([
      "belts life 2, to order 2: life ends on 2026-07-15, before run, planned for 2026-08-01 (line 8)",
    ]);
  });

  test("by its running hours, once they are used up", () => {
    const log = (ran: string) => `part tensioner "Belt tensioner"
  life: 20 h running
${RUN}
day 2026-05-02
  ran: vehicle ${ran}
`;
    expect(needed(log("19.9 h"))).toEqual([]);
    expect(needed(log("20 h"))).toEqual([
      "tensioner life 1, to order 1: life of 20 h used up, before run, planned for 2026-08-01 (line 7)",
    ]);
  });

  test("an overdue hold point counts as of today where no other is planned", () => {
    const overdue = RUN.replace("2026-08-01", "2026-05-30");
    expect(needed(`${EXTINGUISHER}${overdue}`)).toEqual([]);
    expect(needed(`${EXTINGUISHER.replace("07-31", "05-31")}${overdue}`)).toEqual([
      "extinguisher life 1, to order 1: life ends on 2026-05-31, before run, planned for 2026-05-30 (line 7)",
    ]);
  });

  test("the next hold point alone, and only one that covers it and is not released", () => {
    const elsewhere = `
part brakes "Brakes"

hold brakes_ok "Brakes"
  covers: brakes
  planned: 2026-08-01
`;
    expect(needed(`${EXTINGUISHER}${elsewhere}`)).toEqual([]);
    const sooner = `${RUN}
hold fire_up "Fire up"
  planned: 2026-06-20
`;
    expect(needed(`${EXTINGUISHER}${sooner}`)).toEqual([]);
    const released = `${sooner}
day 2026-05-30
  released: fire_up
`;
    expect(needed(`${EXTINGUISHER}${released}`)).toHaveLength(1);
  });

  test("until a new one is fitted; what is in hand need not be ordered", () => {
    const bought = `${EXTINGUISHER}${RUN}
day 2026-05-02
  bought: 1 x extinguisher
`;
    expect(needed(bought)).toEqual([
      "extinguisher life 1, to order 0: life ends on 2026-07-31, before run, planned for 2026-08-01 (line 7)",
    ]);
    expect(needed(`${bought}  removed: extinguisher\n  fitted: extinguisher expires 2030-06-30\n`)).toEqual(
      [],
    );
  });

  test("with a decision to renew it, it is one and the same", () => {
    const log = `${EXTINGUISHER}${RUN}
day 2026-05-02
  decided: extinguisher renew
`;
    expect(needed(log).map((line) => line.split(":")[0])).toEqual([
      "extinguisher decision 1, to order 1",
      "extinguisher life 1, to order 1",
    ]);
  });
});

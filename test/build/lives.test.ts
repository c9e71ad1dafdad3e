import { describe, expect, it } from "vitest";
import type { FindingCode } from "../../server/build/finding.ts";
import type { IsoDate } from "../../server/quantities/dates.ts";
import { expectFindings, findingOf } from "./marked-build.ts";

const LIVES: readonly FindingCode[] = ["life-expired", "life-ends-soon", "no-made-date", "service-due"];
const TODAY = "2026-05-02" as IsoDate;

const expectLives = (log: string, today = TODAY) => expectFindings(LIVES, log, today);

describe("a life", () => {
  it("is over the day after its last, at the record that says so", () => {
    expectLives(
      `
      part one "Extinguisher"
        expires: 2026-05-02
      part other "Extinguisher"
        expires: 2026-05-01
        ^^^^^^^^^^^^^^^^^^^ life-expired
      `,
    );
  });

  it("of a new item is the new item's, at the line that fitted it", () => {
    expectLives(
      `
      part belt "Belt"
        life: 5 year from made
        made: 2015-06-01

      day 2026-03-01
        bought: 1 x belt
        removed: belt
        decided: belt renew
        fitted: belt made 2021-06-01
      `,
    );
    expectLives(
      `
      part bottle "Bottle"

      day 2026-03-01
        removed: bottle
        fitted: bottle expires 2026-04-01
        ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ life-expired
      `,
    );
  });

  it("may be given a new date by a later line", () => {
    expectLives(
      `
      part bottle "Bottle"
        expires: 2026-04-01

      day 2026-03-01
        changed: bottle expires 2028-04-01
      `,
    );
  });

  it("is nobody's concern of goods, of what is gone, and of what is condemned", () => {
    expectLives(
      `
      part spare "Spare"
        as_found: shelf
        expires: 2020-01-01
      part lost "Lost"
        as_found: missing
        expires: 2020-01-01
      part old "Old"
        expires: 2020-01-01

      day 2026-03-01
        removed: old
        decided: old renew
      `,
    );
  });

  it("that is used up in running is over", () => {
    const build = expectLives(
      `
      part plug "Plug"
        life: 20 h running
        ^^^^^^^^^^^^^^^^^^ life-expired
      part rod "Rod"
        life: 40 run running

      day 2026-03-01
        ran: vehicle 20.5 h 39 run
      `,
    );
    expect(findingOf(build, "life-expired").data).toMatchObject({ is: "running", what: "plug" });
  });

  it("that cannot be counted asks for its date", () => {
    expectLives(
      `
      part belt "Belt"
        life: 5 year from made
        ^^^^^^^^^^^^^^^^^^^^^^ no-made-date
      part hose "Hose"
        life: 5 year from made
        made: 2024-02-01

      day 2026-03-01
        bought: 1 x hose
        decided: hose renew
        removed: hose
        fitted: hose
        ^^^^^^^^^^^^ no-made-date
      `,
    );
  });
});

describe("a life that ends before a hold point", () => {
  const log = (holds: string) => `
part front.bottle "Bottle"
  expires: 2026-07-31
${holds}`;

  it("names the first that it does not last for", () => {
    const build = expectLives(
      log(`  ^^^^^^^^^^^^^^^^^^^ life-ends-soon
hold late "Late"
  planned: 2026-10-01
hold soon "Soon"
  planned: 2026-08-01
hold in_time "In time"
  planned: 2026-07-31
`),
    );
    expect(findingOf(build, "life-ends-soon").data).toMatchObject({ hold: "soon", planned: "2026-08-01" });
  });

  it("is of no concern to one that does not cover it, or that is released", () => {
    expectLives(
      log(`hold rear_ok "Rear"
  covers: rear
  planned: 2026-10-01
hold done "Done"
  needs: snags
  planned: 2026-10-01
part rear.hub "Hub"

day 2026-05-01
  released: done
`),
    );
  });
});

describe("a service", () => {
  it("is due by its interval from the last, or by what that one said", () => {
    expectLives(
      `
      part magneto "Magneto"
        service: every 24 month
      part clock "Clock"
        service: every 12 month

      day 2024-05-01
        serviced: magneto
        ^^^^^^^^^^^^^^^^^ service-due
        serviced: clock until 2026-05-02
      `,
    );
  });

  it("of unknown date is due once something leans on it, where the past is unknown", () => {
    const log = (past: string, mark: string) => `
vehicle "Plover"
  past: ${past}
part magneto "Magneto"
  service: every 24 month
${mark}
day 2026-05-01
  ran: vehicle 1 km
`;
    expectLives(log("unknown", "  ^^^^^^^^^^^^^^^^^^^^^^^ service-due"));
    expectLives(log("known", ""));
  });

  it("counts from the fitting of a new item", () => {
    expectLives(
      `
      part magneto "Magneto"
        service: every 24 month
        ^^^^^^^^^^^^^^^^^^^^^^^ service-due

      day 2024-04-30
        bought: 1 x magneto
        decided: magneto renew
        removed: magneto
        fitted: magneto
      `,
    );
  });
});

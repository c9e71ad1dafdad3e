import { describe, expect, it } from "vitest";
import type { FindingCode } from "../../server/build/finding.ts";
import type { IsoDate } from "../../server/quantities/dates.ts";
import { buildOf, expectFindings, findingOf, nodeAt } from "./marked-build.ts";

const CIRCUIT = `
  part hose "Hose"
  part caliper "Caliper"
  part upright "Upright"

  joint banjo "Hose to caliper"
    joins: hose, caliper
    torque: 20 N.m ± 10 %
  joint caliper_bolts "Caliper to upright"
    joins: caliper, upright
    torque: 50 N.m ± 10 %

  system brakes "Brakes"
    fluid: "DOT 4"
    capacity: 0.6 l
    parts: hose, caliper
    bleed: yes
    pressure_test: 70 bar for 2 min
`;

/** A log of the circuit above: `facts` are the records of one day, indented by four. */
const withCircuit = (facts: string) => `${CIRCUIT}
  day 2026-05-02
${facts}
`;

const stageAfter = (facts: string) => {
  const build = buildOf(withCircuit(facts));
  return build.standing.systems.get(nodeAt(build, "brakes"))?.stage;
};

const CLOSED = `
    opened: brakes
    filled: brakes 0.6 l
    bled: brakes
    proved: brakes at 70 bar for 2 min`;

describe("the stage of a system", () => {
  it.each([
    ["", "as_found"],
    ["    opened: brakes", "open"],
    ["    opened: brakes\n    filled: brakes 0.5 l", "filled"],
    ["    opened: brakes\n    filled: brakes 0.5 l\n    bled: brakes", "bled"],
    [CLOSED, "proved"],
    [`${CLOSED}\n    drained: brakes`, "open"],
    [`${CLOSED}\n    removed: hose`, "open"],
    [`${CLOSED}\n    loosened: banjo`, "open"],
    [`${CLOSED}\n    loosened: caliper_bolts`, "open"],
    [`${CLOSED}\n    torqued: banjo 20 N.m`, "proved"],
  ])("after %j is %s", (facts, stage) => {
    expect(stageAfter(facts)).toBe(stage);
  });

  it("is bled without a filling: bleeding fills as well", () => {
    expect(stageAfter("    opened: brakes\n    bled: brakes")).toBe("bled");
  });

  it("keeps its fluid where everything that holds it comes off as a unit", () => {
    const build = buildOf(`
      part engine.sump "Sump"
      part engine.block "Block"
      part gearbox "Gearbox"

      system engine.oil "Oil"
        parts: engine.sump, engine.block
      system gearbox_oil "Oil"
        parts: gearbox, engine.block

      day 2026-05-02
        removed: engine as a unit
    `);
    const stages = ["engine.oil", "gearbox_oil"].map(
      (path) => build.standing.systems.get(nodeAt(build, path))?.stage,
    );
    expect(stages).toEqual(["as_found", "open"]);
  });
});

const PROOFS: readonly FindingCode[] = ["proved-while-open", "not-proved", "opened-not-bled"];

describe("a proof", () => {
  it("below the pressure or the time that is asked for is none", () => {
    expectFindings(
      PROOFS,
      withCircuit(`    opened: brakes
    filled: brakes 0.6 l
    bled: brakes
    proved: brakes at 60 bar for 2 min
    ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ proved-while-open
    proved: brakes at 70 bar for 90 s
    ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ proved-while-open
    proved: brakes at 1016 psi for 2 min
    proved: brakes`),
    );
  });

  it("is compared exactly, whatever the units", () => {
    // 70 bar is 1015.26 psi (1 psi = 6894.757 Pa, NIST SP 811).
    expectFindings(
      PROOFS,
      withCircuit(`    bled: brakes
    proved: brakes at 1015.2 psi for 2 min
    ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ proved-while-open
    proved: brakes at 1015.3 psi for 2 min`),
    );
  });

  it("over a joint that is not secured is none, and says which and why", () => {
    const build = buildOf(
      withCircuit(`    loosened: banjo
    bled: brakes
    proved: brakes at 70 bar for 2 min`),
    );
    expect(findingOf(build, "proved-while-open").data).toMatchObject({ why: "joint", joint: "banjo" });
    expect(build.standing.systems.get(nodeAt(build, "brakes"))?.stage).toBe("bled");
  });

  it("of an open system is none, and is its only complaint", () => {
    expectFindings(
      PROOFS,
      withCircuit(`    drained: brakes
    ^^^^^^^^^^^^^^^ opened-not-bled
    proved: brakes at 70 bar for 2 min
    ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ proved-while-open
    ran: vehicle 1 h`),
    );
  });
});

describe("what was not done to a system", () => {
  it("is a complaint at the fact that first opened it, once it is run", () => {
    expectFindings(
      PROOFS,
      withCircuit(`    removed: hose
    ^^^^^^^^^^^^^ opened-not-bled
    loosened: caliper_bolts
    fitted: hose
    torqued: banjo 20 N.m
    torqued: caliper_bolts 50 N.m
    ran: vehicle 10 min`),
    );
  });

  it("is none while nothing leans on it", () => {
    expectFindings(PROOFS, withCircuit("    opened: brakes"));
  });

  it("is the proof alone where it was bled", () => {
    expectFindings(
      PROOFS,
      withCircuit(`    opened: brakes
    ^^^^^^^^^^^^^^ not-proved
    bled: brakes
    ran: vehicle 10 min`),
    );
  });

  it("leans on a hold point that is near, not on one that is far", () => {
    const planned = (date: string) => `hold first_run "First run"
  needs: systems
  planned: ${date}

system brakes "Brakes"
  bleed: yes

day 2026-05-02
  opened: brakes
`;
    const codes = (date: string) =>
      buildOf(planned(date), "2026-05-03" as IsoDate).findings.map(({ code }) => code);
    expect(codes("2026-05-10")).toContain("opened-not-bled");
    expect(codes("2026-05-11")).not.toContain("opened-not-bled");
  });
});

describe("the fluid", () => {
  it.each([
    // FMVSS 116: DOT 5 is silicone based, DOT 3, 4 and 5.1 are not.
    ["DOT 4", "DOT 4", true],
    ["DOT 4", "DOT 5.1", true],
    ["DOT 3", "dot4", true],
    ["DOT 4", "DOT 5", false],
    ["DOT 5", "DOT 5.1", false],
    ["DOT 4", "mineral oil", false],
    ["20W-50", "20W-50 mineral", true],
    ["SAE 40, straight", "SAE 40", true],
    ["SAE 40", "SAE 20", false],
    ["EP 90", "20W-50", false],
    ["ethylene glycol, 50 %", "Ethylene glycol 50 %", true],
  ])("%j filled with %j is right: %s", (asked, filled, right) => {
    const build = buildOf(`
      system s "System"
        fluid: "${asked}"

      day 2026-05-02
        filled: s 1 l with "${filled}"
    `);
    expect(build.findings.some(({ code }) => code === "wrong-fluid")).toBe(!right);
  });

  it("beyond what the system holds is too much", () => {
    expectFindings(
      ["overfilled"],
      `
      system s "System"
        capacity: 4 imp_pt

      day 2026-05-02
        filled: s 2.2 l
        filled: s 4 imp_pt
        filled: s 2.3 l
        ^^^^^^^^^^^^^^^ overfilled
      `,
    );
  });

  it("is as old as its last change; topping up makes it no younger", () => {
    const log = `
      system s "System"
        capacity: 1 l
        change: every 24 month

      day 2026-05-02
        filled: s 1 l
        ^^^^^^^^^^^^^ fluid-change-due

      day 2028-01-10
        filled: s 0.1 l
    `;
    expectFindings(["fluid-change-due"], log, "2028-05-03" as IsoDate);
    const unmarked = log.replace(/^.*\^.*\n/m, "");
    expectFindings(["fluid-change-due"], unmarked, "2028-05-02" as IsoDate);
  });

  it("counts anew after it was drained, however little goes in", () => {
    expectFindings(
      ["fluid-change-due"],
      `
      system s "System"
        capacity: 1 l
        change: every 24 month

      day 2026-05-02
        filled: s 1 l

      day 2028-01-10
        drained: s
        filled: s 0.3 l
      `,
      "2028-06-01" as IsoDate,
    );
  });

  it("of unknown age is due once something leans on it, where the past is unknown", () => {
    const log = (past: string) => `vehicle "Plover"
  past: ${past}

system s "System"
  change: every 24 month

day 2026-05-02
  ran: vehicle 1 h
`;
    const codes = (past: string) => buildOf(log(past)).findings.map(({ code }) => code);
    expect(codes("unknown")).toContain("fluid-change-due");
    expect(codes("known")).not.toContain("fluid-change-due");
  });
});

describe("a system", () => {
  it("can hurt where one of its parts can", () => {
    const filled = (safety: string) =>
      findingOf(
        buildOf(`
  part caliper "Caliper"
${safety}
  system brakes "Brakes"
    fluid: "DOT 4"
    parts: caliper

  day 2026-05-02
    filled: brakes 0.6 l with "HS-1"
`),
        "wrong-fluid",
      );
    expect(filled("").critical).toBe(false);
    expect(filled("    safety: critical\n").critical).toBe(true);
  });
});

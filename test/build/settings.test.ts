import { describe, expect, it } from "vitest";
import { settingsOf } from "../../server/build/setting-check.ts";
import { buildOf, expectFindings, nodeAt } from "./marked-build.ts";

const WANTED = `
  setup one_up "One up"
  setup empty "Empty"
  gauge dial "Dial gauge"
    uncertainty: ± 0.1 mm
  assembly front "Front"
    setting: toe 1.5 mm ± 0.5 mm
`;

describe("a setting that is out", () => {
  it("is a complaint at the line that set or measured it last, and of the past at those before under other setups", () => {
    expectFindings(
      ["setting-out-of-range"],
      `${WANTED}
  day 2026-05-02
    set: front toe 2.4 mm for empty
    ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ past setting-out-of-range
    set: front toe 2.2 mm for one_up
    ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ setting-out-of-range
      `,
    );
  });

  it("is none where the gauge cannot prove it", () => {
    expectFindings(
      ["setting-out-of-range"],
      `${WANTED}
  day 2026-05-02
    set: front toe 2.05 mm with dial
      `,
    );
  });
});

describe("settings as wanted and as set", () => {
  it("keep the newest of each setup, the newest first", () => {
    const build = buildOf(`${WANTED}
  day 2026-05-02
    set: front toe 1.2 mm for one_up
    set: front.toe 1.4 mm for empty
    set: front toe 1.6 mm for one_up
    measured: front toe 1.7 mm
    `);
    const [toe] = settingsOf(build.standing, nodeAt(build, "front"));
    const set = toe?.asSet.map(({ values, setup }) => `${values[0].value} ${setup?.name}`);
    expect(set).toEqual(["1.7 undefined", "1.6 one_up", "1.4 empty"]);
    expect(toe?.verdict?.verdict).toBe("within");
  });

  it("without a tolerance are wanted exactly", () => {
    const verdict = (value: string) => {
      const build = buildOf(`
        assembly front "Front"
          setting: toe 1.5 mm

        day 2026-05-02
          set: front toe ${value}
      `);
      return settingsOf(build.standing, nodeAt(build, "front"))[0]?.verdict?.verdict;
    };
    expect(verdict("1.5 mm")).toBe("within");
    expect(verdict("1.6 mm")).toBe("outside");
  });

  it("are each answered by what was set and measured under their own name", () => {
    const build = buildOf(`
      assembly front "Front"
        setting: toe 1.5 mm ± 0.5 mm
        setting: offset 3 mm ± 1 mm
        setting: height 90 mm ± 1 mm

      day 2026-05-02
        set: front toe 1.2 mm
        measured: front offset 9 mm
    `);
    const checks = settingsOf(build.standing, nodeAt(build, "front")).map(({ wanted, asSet, verdict }) => [
      wanted.record.name,
      asSet.map(({ values }) => values[0].value.toString()),
      verdict?.verdict,
    ]);
    expect(checks).toEqual([
      ["toe", ["1.2"], "within"],
      ["offset", ["9"], "outside"],
      ["height", [], undefined],
    ]);
  });

  it("with one limit alone have no other", () => {
    const verdict = (value: string) => {
      const build = buildOf(`
        assembly front "Front"
          setting: height min 90 mm

        day 2026-05-02
          set: front height ${value}
      `);
      return settingsOf(build.standing, nodeAt(build, "front"))[0]?.verdict?.verdict;
    };
    expect([verdict("89 mm"), verdict("90 mm"), verdict("200 mm")]).toEqual(["outside", "within", "within"]);
  });
});

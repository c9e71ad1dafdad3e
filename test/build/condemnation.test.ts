import { describe, expect, it } from "vitest";
import { condemnation } from "../../server/build/condemnation.ts";
import { buildOf, expectFindings, partAt } from "./marked-build.ts";

/** Why a part that was taken off is condemned after these lines. */
function whyAfter(lines: string, records = ""): string | undefined {
  const build = buildOf(`
supplier shop "Shop"
part kit "Kit"
  stock: 1
part arm "Arm"
  limit: play max 0.1 mm
${records}
day 2026-05-02
  removed: arm
${lines}`);
  return condemnation(build.standing, partAt(build, "arm"))?.why;
}

const CRITICAL = "  safety: critical";

describe("what condemns a part", () => {
  it.each(["cracked", "bent", "seized", "stripped", "wrong"])("is that it was found %s", (condition) => {
    expect(whyAfter(`  found: arm ${condition}\n`)).toBe(condition);
  });

  it.each(["recondition", "repair", "renew", "make", "scrap"])(
    "is that it was decided to %s it",
    (decision) => {
      expect(whyAfter(`  decided: arm ${decision}\n`)).toBe(decision);
    },
  );

  it.each(["good", "dirty", "worn", "pitted", "play", "perished", "rounded"])(
    "is not that an ordinary part was found %s",
    (condition) => {
      expect(whyAfter(`  found: arm ${condition}\n`)).toBeUndefined();
    },
  );

  it.each(["worn", "pitted", "play", "perished", "corroded", "modified", "missing", "bodged"])(
    "is that a safety-critical part was found %s",
    (condition) => {
      expect(whyAfter(`  found: arm ${condition}\n`, CRITICAL)).toBe(condition);
    },
  );

  it.each(["good", "dirty"])("is not that a safety-critical part was found %s", (condition) => {
    expect(whyAfter(`  found: arm ${condition}\n`, CRITICAL)).toBeUndefined();
  });

  it("is not wear of a safety-critical part that was measured within its limit", () => {
    expect(whyAfter("  found: arm worn\n  measured: arm play 0.05 mm\n", CRITICAL)).toBeUndefined();
    expect(whyAfter("  found: arm worn\n  measured: arm play 0.15 mm\n", CRITICAL)).toBe("worn");
  });

  it("is not a decision to use it again, or to modify it", () => {
    expect(whyAfter("  decided: arm reuse\n")).toBeUndefined();
    expect(whyAfter("  decided: arm modify\n")).toBeUndefined();
  });

  it("is what was found rather than what was decided about it", () => {
    expect(whyAfter("  found: arm cracked\n  decided: arm repair\n")).toBe("cracked");
  });

  it("is safety-critical through an assembly, and through the part that it is in", () => {
    const build = buildOf(`
      assembly steering "Steering"
        safety: critical
      part steering.arm "Arm"
      part caliper "Caliper"
        safety: critical
      part caliper.piston "Piston"
      day 2026-05-02
        found: steering.arm, caliper.piston pitted
    `);
    expect(condemnation(build.standing, partAt(build, "steering.arm"))?.why).toBe("pitted");
    expect(condemnation(build.standing, partAt(build, "caliper.piston"))?.why).toBe("pitted");
  });
});

describe("what lifts it", () => {
  it("is that a new item was fitted", () => {
    expect(whyAfter("  found: arm cracked\n  decided: arm renew\n  bought: 1 x arm\n  fitted: arm\n")).toBe(
      undefined,
    );
  });

  it("is that it is back, of an ordinary part", () => {
    expect(whyAfter("  found: arm bent\n  sent: arm to shop\n  back: arm\n")).toBeUndefined();
  });

  it("is that it was repaired", () => {
    expect(whyAfter("  found: arm seized\n  repaired: arm\n")).toBeUndefined();
  });

  it("is that it was reconditioned with its kit in hand", () => {
    const kit = "  kit: kit";
    expect(whyAfter("  decided: arm recondition\n  reconditioned: arm\n", kit)).toBeUndefined();
    expect(whyAfter("  used: 1 x kit\n  decided: arm recondition\n  reconditioned: arm\n", kit)).toBe(
      "recondition",
    );
    expect(whyAfter("  decided: arm recondition\n  reconditioned: arm\n")).toBeUndefined();
  });

  it("is a later decision to use it again that says why", () => {
    expect(whyAfter('  found: arm bent\n  decided: arm reuse "straight within 0.1 on the plate"\n')).toBe(
      undefined,
    );
    expect(whyAfter("  found: arm bent\n  decided: arm reuse\n")).toBe("bent");
    expect(whyAfter('  decided: arm renew\n  decided: arm reuse "none to be had"\n')).toBeUndefined();
  });

  it("is not a decision that came before", () => {
    expect(whyAfter('  decided: arm reuse "fine"\n  found: arm bent\n')).toBe("bent");
  });

  it("is not another decision against it: that one counts then", () => {
    expect(whyAfter("  decided: arm repair\n  decided: arm scrap\n")).toBe("scrap");
  });

  it("is lifted no more by what came before a new finding", () => {
    expect(whyAfter("  found: arm bent\n  repaired: arm\n  found: arm bent\n")).toBe("bent");
  });
});

describe("on a safety-critical part", () => {
  it("back alone does not lift it: it is inspected or measured again", () => {
    const sent = "  found: arm pitted\n  sent: arm to shop\n  back: arm\n";
    expect(whyAfter(sent, CRITICAL)).toBe("pitted");
    expect(whyAfter(`${sent}  inspected: arm by eye\n`, CRITICAL)).toBeUndefined();
    expect(whyAfter(`${sent}  measured: arm play 0.05 mm\n`, CRITICAL)).toBeUndefined();
  });

  it("an inspection before it came back is none", () => {
    expect(
      whyAfter("  found: arm pitted\n  inspected: arm by eye\n  sent: arm to shop\n  back: arm\n", CRITICAL),
    ).toBe("pitted");
  });

  it.each(["cracked", "bent", "stretched"])(
    "use after it was %s needs a crack test and a second pair of eyes",
    (condition) => {
      const decided = `  found: arm ${condition}\n  decided: arm reuse "cold straightened"\n`;
      const test = '  inspected: arm by magnetic_particle by "FH"\n';
      const seen = '  seen: arm by "KT"\n';
      expect(whyAfter(decided, CRITICAL)).toBe(condition);
      expect(whyAfter(decided + test, CRITICAL)).toBe(condition);
      expect(whyAfter(decided + seen, CRITICAL)).toBe(condition);
      expect(whyAfter(decided + test + seen, CRITICAL)).toBeUndefined();
    },
  );

  it("a look by eye is no crack test", () => {
    expect(
      whyAfter(
        '  found: arm cracked\n  decided: arm reuse "why"\n  inspected: arm by eye\n  seen: arm by "KT"\n',
        CRITICAL,
      ),
    ).toBe("cracked");
  });

  it("a repair needs them too, and after the repair: what was tested before it is another weld", () => {
    const test = '  inspected: arm by crack_test by "FH"\n  seen: arm by "KT"\n';
    expect(whyAfter("  found: arm cracked\n  repaired: arm\n", CRITICAL)).toBe("cracked");
    expect(whyAfter(`  found: arm cracked\n${test}  repaired: arm\n`, CRITICAL)).toBe("cracked");
    expect(whyAfter(`  found: arm cracked\n  repaired: arm\n${test}`, CRITICAL)).toBeUndefined();
  });

  it("a decision to repair does not make the crack forgotten", () => {
    expect(
      whyAfter('  found: arm cracked\n  decided: arm repair\n  decided: arm reuse "good enough"\n', CRITICAL),
    ).toBe("cracked");
  });

  it("the second pair of eyes is not that of the one who tested or repaired it", () => {
    const build = expectFindings(
      ["seen-by-same", "fitted-condemned"],
      `
      part arm "Arm"
        safety: critical
      day 2026-05-02
        removed: arm
        found: arm cracked
        repaired: arm by "FH"
        inspected: arm by crack_test by "FH"
        seen: arm by "FH"
        ^^^^^^^^^^^^^^^^^ seen-by-same
        fitted: arm
        ^^^^^^^^^^^ fitted-condemned
      `,
    );
    expect(condemnation(build.standing, partAt(build, "arm"))?.why).toBe("cracked");
  });
});

it("what was reconditioned without its kit is still to be reconditioned", () => {
  const build = buildOf(`
part kit "Kit"
part caliper "Caliper"
  kit: kit
part cylinder "Cylinder"
  kit: kit

day 2026-05-02
  removed: caliper, cylinder
  decided: caliper recondition
  decided: cylinder recondition
  bought: 1 x kit
  reconditioned: caliper
  reconditioned: cylinder
`);
  expect(partAt(build, "caliper").decision?.settled?.fact.word).toBe("reconditioned");
  expect(partAt(build, "cylinder").decision?.settled).toBeUndefined();
});

/** Names and days as a narrow view has room for them. */
import { describe, expect, test } from "vitest";
import { dayInBrief, namesInBrief } from "../../client/views/in-brief.ts";

describe("names in brief", () => {
  test("are cut behind a word, where they are long", () => {
    expect(namesInBrief(["Hub", "Front master cylinder", "Brakes and steering, before it moves"])).toEqual([
      "Hub",
      "Front master…",
      "Brakes and steering…",
    ]);
    expect(namesInBrief(["front_left_upright_outer_bearing"])).toEqual(["front_left_upright_o…"]);
  });

  test("are left as they are where they would be alike", () => {
    const bolts = ["Bottom wishbone to frame", "Bottom wishbone to upright"];
    expect(namesInBrief(bolts)).toEqual(bolts);
    // Two of one name are told apart by what stands behind them.
    expect(namesInBrief(["Front master cylinder", "Front master cylinder"])).toEqual([
      "Front master…",
      "Front master…",
    ]);
  });
});

describe("a day in brief", () => {
  test("is told in the language of the editor, day first in English", () => {
    expect(dayInBrief("2026-11-07", "2026-11-24", "en")).toBe("7 Nov");
    expect(dayInBrief("2026-11-07", "2026-11-24", "de")).toBe("7. Nov.");
  });

  test("has its year where it is far from today", () => {
    expect(dayInBrief("2027-02-03", "2026-11-24", "en")).toBe("3 Feb");
    expect(dayInBrief("2025-11-07", "2026-11-24", "en")).toBe("7 Nov 2025");
    expect(dayInBrief("2027-11-07", "2026-11-24", "en")).toBe("7 Nov 2027");
  });
});

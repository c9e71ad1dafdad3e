import { describe, expect, test } from "vitest";
import type { ProgrammeEntry } from "../../server/reports/programme.ts";
import { briefWords, entryWords, programmeWords } from "../../server/reports/programme-words.ts";
import { date, hold, job, planned, programme, shut } from "./programme-entries.ts";

describe("a plan in words", () => {
  test.each<[ProgrammeEntry, string, string]>([
    [
      job("Strip", { kind: "done", from: date("2026-04-11"), to: date("2026-04-11") }),
      "done, 2026-04-11",
      "2026-04-11; done",
    ],
    [
      job("Strip", planned("2026-05-09", "2026-05-10", { critical: true, begun: "2026-05-01" })),
      "2026-05-09 to 2026-05-10; critical; begun 2026-05-01",
      "2026-05-09 to 2026-05-10; critical",
    ],
    [
      job("Plating", planned("2026-05-09", "2026-05-20"), "Penrose"),
      "2026-05-09 to 2026-05-20; away at Penrose",
      "2026-05-09 to 2026-05-20; away",
    ],
    [job("Strip", { kind: "unplanned" }), "no place in the plan", "no place in the plan"],
    [
      hold("Run", { kind: "released", on: date("2026-05-01") }, "2026-04-30"),
      "hold point, released 2026-05-01",
      "released 2026-05-01",
    ],
    [hold("Run", shut("2026-05-10"), "2026-05-31"), "hold point; planned 2026-05-31", "planned 2026-05-31"],
    [
      hold("Run", shut("2026-06-01"), "2026-05-31"),
      "hold point; planned 2026-05-31; 1 day late",
      "planned 2026-05-31; 1 day late",
    ],
    [
      hold("Run", shut("2026-05-10", true)),
      "hold point, release lapsed; reached 2026-05-10",
      "lapsed; reached 2026-05-10",
    ],
    [
      hold("Run", shut(undefined), "2026-05-31"),
      "hold point; planned 2026-05-31; not reached in the plan",
      "planned 2026-05-31; not reached in the plan",
    ],
  ])("%o is said as %s, and briefly as %s", (entry, words, brief) => {
    expect([entryWords(entry), briefWords(entry)]).toEqual([words, brief]);
  });

  test("the whole is told sentence by sentence", () => {
    const words = programmeWords(
      programme({
        past: [{ date: date("2026-04-25"), hours: 2.5 }],
        entries: [job("Strip", planned("2026-05-09", "2026-05-10"))],
        finish50: date("2026-05-10"),
        finish90: date("2026-05-16"),
      }),
    );
    expect(words).toBe(
      "Today is 2026-05-02. Diary: 1 day, 2.5 h. Strip: 2026-05-09 to 2026-05-10. Finish at 50 %: 2026-05-10. Finish at 90 %: 2026-05-16.",
    );
  });
});

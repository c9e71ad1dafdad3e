/** What is shown of several comparisons that were asked for: the newest, whichever is answered first. */
import { afterEach, beforeEach, describe, expect, test, vi } from "vitest";
import { ComparisonView } from "../../../client/record/comparison-view.ts";
import type { ShownBuild } from "../../../client/shown-build.ts";
import { saveLog, seen } from "../editor-stand-in.ts";

vi.mock("vscode", async () => await import("../editor-stand-in.ts"));

interface Question {
  readonly from: string;
  readonly answer: (value: unknown) => void;
}

let questions: Question[];
let view: ComparisonView;
beforeEach(() => {
  questions = [];
  [seen.said, seen.commands] = [[], []];
  const build = {
    log: null,
    isServed: true,
    askOf: (_log: unknown, _method: unknown, { from }: { from: string }) =>
      new Promise((answer) => questions.push({ from, answer })),
  } as unknown as ShownBuild;
  view = new ComparisonView(build);
});

afterEach(() => view.dispose());

const comparison = (short: string, hasBuild = true) => ({
  is: "recorded",
  value: { from: { commit: short, short, day: "2026-05-02", hasBuild }, to: {}, groups: [] },
});

/** Answers the question of that number, counted from 0. */
async function answer(number: number, value: unknown): Promise<void> {
  questions[number]?.answer(value);
  await new Promise((resolve) => setImmediate(resolve));
}

describe("a comparison", () => {
  test("that was asked for later is the one that is shown", async () => {
    void view.compare("first");
    void view.compare("second");
    await answer(1, comparison("2222"));
    await answer(0, comparison("1111"));
    expect(seen.view.message).toMatch(/^Compared with 2222\./);
  });

  test("is asked for again when a log is saved; an answer that was overtaken is left out", async () => {
    void view.compare("first");
    saveLog();
    saveLog();
    expect(questions.map(({ from }) => from)).toEqual(["first", "first", "first"]);
    await answer(2, comparison("3333"));
    await answer(1, comparison("2222"));
    await answer(0, comparison("1111"));
    expect(seen.view.message).toMatch(/^Compared with 3333\./);
    expect(seen.commands).toContainEqual(["cotter.changes.focus"]);
  });

  test("that was closed stays closed", async () => {
    void view.compare("first");
    await answer(0, comparison("1111"));
    saveLog();
    await view.close();
    await answer(1, comparison("2222"));
    expect(seen.view.message).toBe("");
    saveLog();
    expect(questions).toHaveLength(2);
  });

  test("that is refused leaves the one before it", async () => {
    void view.compare("first");
    await answer(0, comparison("1111"));
    void view.compare("no-such-branch");
    await answer(1, { is: "refused", why: "unknown revision", message: "git knows none" });
    expect(seen.said).toEqual(["There is no such revision. git knows none"]);
    saveLog();
    expect(questions[2]?.from).toBe("first");
    void view.compare("slow");
    void view.compare("no-such-tag");
    await answer(4, { is: "refused", why: "unknown revision", message: "nor that" });
    await answer(3, comparison("4444"));
    expect(seen.view.message).toMatch(/^Compared with 1111\./);
  });

  test("says where there was nothing of the build yet, and where there is no build at all", async () => {
    void view.compare("first");
    await answer(0, comparison("1111", false));
    expect(seen.view.message).toMatch(/^There was nothing of this build at 1111: all of it is new\./);
    void view.compare("second");
    await answer(1, null);
    expect(seen.said).toEqual(["No build is open."]);
  });
});

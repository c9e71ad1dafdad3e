/** What is asked of the extension before all of it is loaded. */
import { beforeEach, describe, expect, test, vi } from "vitest";
import type { AtWork } from "../../client/first.ts";
import { beginWith, COMMANDS } from "../../client/first.ts";
import { forgetAll, seen } from "./editor-stand-in.ts";

vi.mock("vscode", async () => await import("./editor-stand-in.ts"));

beforeEach(forgetAll);

/** The extension called by the editor; the rest is there, or fails to come, when the test says so. */
function called() {
  const deeds: unknown[] = [];
  const log: string[] = [];
  const done =
    (name: string) =>
    (...given: unknown[]) => {
      deeds.push([name, ...given]);
      return `${name} done`;
    };
  const rest = {
    handlers: Object.fromEntries(COMMANDS.map((name) => [name, done(name)])),
    bringBack: done("bringBack"),
    outputChannel: { appendLine: (line: string) => void log.push(line) },
    stop: () => Promise.resolve(),
  } as unknown as AtWork;
  let isAskedFor = false;
  const coming: { resolve?: (rest: AtWork) => void; reject?: (why: Error) => void } = {};
  const promise = new Promise<AtWork>((resolve, reject) => Object.assign(coming, { resolve, reject }));
  const subscriptions: { dispose: () => void }[] = [];
  const context = { subscriptions } as unknown as Parameters<typeof beginWith>[0];
  const loading = beginWith(context, () => {
    isAskedFor = true;
    return promise;
  });
  return {
    deeds,
    log,
    loading,
    come: () => coming.resolve?.(rest),
    fail: (why: Error) => coming.reject?.(why),
    isAskedFor: () => isAskedFor,
  };
}

const turn = () => new Promise((resolve) => setTimeout(resolve, 5));

describe("the extension", () => {
  test("offers all its commands at once, and loads the rest only once the editor has gone on", async () => {
    const { isAskedFor, come, loading, log } = called();
    await Promise.resolve();
    expect([...seen.handlers.keys()]).toEqual(COMMANDS.map((name) => `cotter.${name}`));
    expect(isAskedFor()).toBe(false);
    await turn();
    expect(isAskedFor()).toBe(true);
    come();
    await loading;
    expect(log).toEqual([expect.stringMatching(/^loaded \d+ ms after the extension was called$/)]);
  });

  test("carries out a command that came too soon once it is loaded, once and in order", async () => {
    const { deeds, come } = called();
    const goTo = seen.handlers.get("cotter.goTo")?.({ line: 3 });
    const newDay = seen.handlers.get("cotter.newDay")?.();
    const panel = {};
    const back = seen.bringer?.deserializeWebviewPanel(panel, { name: "order" });
    await turn();
    expect(deeds).toEqual([]);
    come();
    expect(await Promise.all([goTo, newDay, back])).toEqual(["goTo done", "newDay done", "bringBack done"]);
    expect(deeds).toEqual([["goTo", { line: 3 }], ["newDay"], ["bringBack", panel, { name: "order" }]]);
  });

  test("says why it could not be loaded, and lets no command hang", async () => {
    const { fail, loading } = called();
    const newDay = seen.handlers.get("cotter.newDay")?.();
    await turn();
    fail(new Error("no such file: node-client"));
    await expect(loading).rejects.toThrow("no such file");
    await expect(newDay).rejects.toThrow("no such file");
    expect(seen.said).toEqual(["Cotter could not be loaded: no such file: node-client"]);
  });
});

/** What a feature that fails does to the others: nothing. */

import { beforeEach, expect, test } from "vitest";
import type { Connection } from "vscode-languageserver";
import { CancellationToken, CancellationTokenSource, LSPErrorCodes } from "vscode-languageserver";
import type { Host } from "../../server/language-server/host.ts";
import { Session } from "../../server/language-server/session.ts";
import { readSettings, readStartOptions } from "../../server/language-server/settings.ts";
import { folderUri, normalUri, uriWithin } from "../../server/language-server/uri.ts";
import type { IsoDate } from "../../server/quantities/dates.ts";
import { MemoryFiles } from "./memory-files.ts";

const URI = "file:///garage/log.cotter";
let logged: string[];
let session: Session;

beforeEach(async () => {
  logged = [];
  const host: Host = {
    files: new MemoryFiles(),
    today: () => "2026-06-01" as IsoDate,
    now: () => 0,
    turn: () => Promise.resolve(),
    later: () => () => undefined,
  };
  const console = { error: (message: string) => logged.push(message), warn: () => undefined };
  const connection = { console } as unknown as Connection;
  session = new Session(connection, host, {}, readStartOptions(undefined));
  await session.workspace.open(URI, "part disc\n", 1);
});

test("a feature that throws answers nothing and is logged; the next one is asked as usual", async () => {
  const failing = () => {
    throw new Error("it broke");
  };
  expect(await session.answer(URI, CancellationToken.None, "nothing", failing)).toBe("nothing");
  expect(logged.join()).toContain("it broke");
  expect(await session.answer(URI, CancellationToken.None, 0, ({ document }) => document.lineCount)).toBe(2);
});

test("what is found out meanwhile is guarded too, and ended when it is called off", async () => {
  const failing = () => Promise.reject(new Error("git broke"));
  expect(await session.answerMeanwhile(CancellationToken.None, "nothing", failing)).toBe("nothing");
  expect(logged.join()).toContain("git broke");
  const calling = new CancellationTokenSource();
  const ended = session.answerMeanwhile(calling.token, "nothing", async (signal) => {
    const called = new Promise<void>((resolve) => signal.addEventListener("abort", () => resolve()));
    calling.cancel();
    await called;
    return "too late";
  });
  await expect(ended).rejects.toMatchObject({ code: LSPErrorCodes.RequestCancelled });
});

test("a text that changes while the rest of the build is read gets no answer", async () => {
  const answer = session.answer(URI, CancellationToken.None, "nothing", () => "stale");
  session.workspace.edit(URI, 2, [() => ({ text: "part hub\n" })]);
  await expect(answer).rejects.toMatchObject({ code: LSPErrorCodes.ContentModified });
});

test("a request that was called off gets no answer", async () => {
  await expect(session.answer(URI, CancellationToken.Cancelled, 0, () => 1)).rejects.toMatchObject({
    code: LSPErrorCodes.RequestCancelled,
  });
});

test("a file that is not there has nothing to tell", async () => {
  expect(await session.answer("file:///garage/other.cotter", CancellationToken.None, 0, () => 1)).toBe(0);
});

test("settings are read as far as they make sense, the rest as by default", () => {
  const settings = readSettings({
    severity: { "near-limit": "off", "over-limit": "warning", "under-limit": "very bad", "fit-out": 3 },
    inlayHints: { verdicts: false, computed: "yes" },
    codeLens: 1,
  });
  expect([...settings.severity]).toEqual([
    ["near-limit", "off"],
    ["over-limit", "warning"],
  ]);
  expect(settings.inlayHints).toEqual({ computed: true, converted: true, verdicts: false, running: true });
  expect(settings.codeLens).toBe(true);
  for (const odd of [undefined, null, 3, "x", []]) expect(readSettings(odd)).toEqual(readSettings({}));
  expect(readStartOptions({ rulesPage: "command:quit" }).rulesPage).toBeUndefined();
  expect(readStartOptions({ rulesPage: "https://rules.example/codes" }).rulesPage).toBe(
    "https://rules.example/codes",
  );
});

test("the spellings of a URI are one file", () => {
  const spellings = [
    "file:///C:/my log/ä.cotter",
    "file:///c%3A/my%20log/%C3%A4.cotter",
    "FILE:///c:/my%20log/ä.cotter",
  ];
  expect(new Set(spellings.map(normalUri)).size).toBe(1);
  expect(normalUri("file:///a/100%.cotter")).toBe("file:///a/100%25.cotter");
  expect(folderUri("file:///a/b/")).toBe("file:///a/b");
  expect(uriWithin("file:///a/b", "../c/./d e.png")).toBe("file:///a/c/d%20e.png");
});

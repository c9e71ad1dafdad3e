/** The record in git, as an editor meets it through the server: only of folders that it says are trusted. */
import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import path from "node:path";
import { afterAll, beforeAll, describe, expect, test, vi } from "vitest";
import type { Hover } from "vscode-languageserver";
import type { RecordRequests } from "../../../server/language-server/protocol.ts";
import { scriptedRepository } from "../../history/scripted-repository.ts";
import { Editor, uriOf } from "./editor.ts";

type Asked<M extends keyof RecordRequests> = NonNullable<RecordRequests[M]["result"]>;

const VEHICLE = 'vehicle "Kestrel"\n\npart hub "Hub"\n  limit: bore max 25.05 mm\n';
const DAY = "day 2026-05-02 1 h\n  removed: hub\n";
const READING = "  measured: hub bore 25.02 mm\n";

let folder: string;
let uri: string;
beforeAll(() => {
  folder = scriptedRepository([
    { day: "2026-05-02", files: { "build.cotter": VEHICLE, "diary.cotter": DAY } },
    { day: "2026-05-20", author: "KT", files: { "diary.cotter": DAY + READING } },
    {
      day: "2026-05-21",
      files: { "diary.cotter": DAY + READING.replace("25.02", "25.04"), "notes.txt": "" },
    },
  ]);
  uri = uriOf(path.join(folder, "diary.cotter"));
});

const hoverAt = async (editor: Editor, line: number) => {
  const position = { line, character: 14 };
  return JSON.stringify(
    await editor.request<Hover>("textDocument/hover", { textDocument: { uri }, position }),
  );
};

/** Until git has answered. */
const eventually = <T>(look: () => Promise<T>) => vi.waitFor(look, { timeout: 20_000, interval: 20 });

describe("a hover", () => {
  test("says that a fact was written later than its day, once git has answered", async () => {
    const editor = await Editor.start({
      program: "here",
      folders: [folder],
      initializationOptions: { trusted: true },
    });
    expect(await hoverAt(editor, 2)).toContain("Hub");
    await eventually(async () =>
      expect(await hoverAt(editor, 2)).toContain("Written 19 days later, on 2026-05-21, by JR"),
    );
    expect(await hoverAt(editor, 1)).not.toContain("Written");
    expect(await editor.stop()).toBe(0);
  });

  test("does not, until the editor says that the folder is trusted", async () => {
    const editor = await Editor.start({ program: "here", folders: [folder] });
    const untrusted = [await hoverAt(editor, 2), await hoverAt(editor, 2)];
    editor.notify("cotter/trusted", { trusted: true });
    await eventually(async () => expect(await hoverAt(editor, 2)).toContain("Written 19 days later"));
    editor.notify("cotter/trusted", { trusted: false });
    expect([...untrusted, await hoverAt(editor, 2)].join()).not.toContain("Written");
    await editor.stop();
  });

  test("does not, where its user does not want it", async () => {
    const editor = await Editor.start({
      program: "here",
      folders: [folder],
      initializationOptions: { trusted: true, settings: { writtenLater: false } },
    });
    for (let times = 0; times < 3; times++) expect(await hoverAt(editor, 2)).not.toContain("Written");
    await editor.stop();
  });
});

describe("a log that was renamed, of a build below the root", () => {
  test("is found on each side under the name that it had there", async () => {
    const renamed = scriptedRepository([
      { day: "2026-05-02", files: { "shed/build.cotter": VEHICLE, "shed/diary.cotter": DAY + READING } },
      { day: "2026-05-09", files: { "shed/diary.cotter": null, "shed/may.cotter": DAY + READING } },
      { day: "2026-05-16", files: { "shed/may.cotter": DAY } },
    ]);
    const editor = await Editor.start({
      program: "here",
      folders: [renamed],
      initializationOptions: { trusted: true },
    });
    const log = uriOf(path.join(renamed, "shed", "may.cotter"));
    const of = { uri: log, from: "HEAD~2", to: null };
    const compared = await editor.request<Asked<"cotter/compare">>("cotter/compare", of);
    const history = await editor.request<Asked<"cotter/history">>("cotter/history", { uri: log, ref: "hub" });
    if (compared.is === "refused" || history.is === "refused") throw new Error("both are answered");
    const gone = compared.value.groups[0]?.changes[0];
    expect(gone?.change).toBe("reading of 2026-05-02 taken out");
    expect(gone?.at).toMatchObject({
      left: { path: "shed/diary.cotter" },
      right: { path: "shed/may.cotter", uri: log },
      side: "left",
      line: 2,
    });
    const text = { uri: log, commit: gone?.at?.left.commit, path: gone?.at?.left.path };
    expect(await editor.request("cotter/recordedText", text)).toEqual({
      is: "recorded",
      value: DAY + READING,
    });
    const taken = history.value.statements.at(-1);
    expect(taken).toMatchObject({ is: "taken out", commit: { subject: "Commit 3" } });
    expect(taken?.at).toMatchObject({
      left: { path: "shed/may.cotter" },
      right: { path: "shed/may.cotter" },
    });
    await editor.stop();
  });
});

describe("the record of a build", () => {
  let editor: Editor;
  beforeAll(async () => {
    editor = await Editor.start({
      program: "here",
      folders: [folder],
      initializationOptions: { trusted: true },
    });
  });
  afterAll(() => editor.stop());

  const ask = async <M extends keyof RecordRequests>(
    method: M,
    params: Omit<RecordRequests[M]["params"], "uri">,
  ) => await editor.request<Asked<M>>(method, { uri, ...params });

  /** What a request is answered with; an error where it is refused. */
  const answered = async <
    M extends "cotter/commits" | "cotter/compare" | "cotter/recordedText" | "cotter/history",
  >(
    method: M,
    params: Omit<RecordRequests[M]["params"], "uri">,
  ) => {
    const answer = await ask(method, params);
    if (answer.is === "refused") throw new Error(answer.message);
    return answer.value as Extract<Asked<M>, { is: "recorded" }>["value"];
  };

  test("has the commits that touched its logs, newest first", async () => {
    const commits = await answered("cotter/commits", {});
    expect(commits.map(({ day, author, subject }) => [day, author, subject])).toEqual([
      ["2026-05-21", "JR", "Commit 3"],
      ["2026-05-20", "KT", "Commit 2"],
      ["2026-05-02", "JR", "Commit 1"],
    ]);
  });

  test("is compared with the build in the editor, each change with its line on both sides", async () => {
    editor.open(uri, `${DAY}${READING.replace("25.02", "25.90")}`);
    const { from, to, groups } = await answered("cotter/compare", { from: "2026-05-20", to: null });
    expect([from.day, to.commit]).toEqual(["2026-05-20", null]);
    expect(groups[0]).toMatchObject({
      heading: "Look at these first",
      changes: [
        {
          thing: "Hub",
          refs: ["hub"],
          change: "reading of 2026-05-02 altered after the fact",
          standsOut: true,
          at: {
            left: { commit: from.commit, path: "diary.cotter" },
            right: { commit: null, uri },
            side: "right",
            line: 2,
          },
        },
      ],
    });
  });

  test("has its files as they were; none where there was none", async () => {
    const of = (log: string) => answered("cotter/recordedText", { commit: "2026-05-20", path: log });
    expect(await of("diary.cotter")).toBe(DAY + READING);
    expect(await of("june.cotter")).toBe("");
    // Of what is in the repository only logs are shown.
    const notes = await answered("cotter/recordedText", { commit: "HEAD", path: "notes.txt" });
    expect(notes).toBe("");
  });

  test("has the history of the thing at a place", async () => {
    const place = { line: 2, character: 20 };
    const ref = await ask("cotter/thingAt", place);
    expect(ref).toBe("hub.bore");
    const { statements } = await answered("cotter/history", { ref: ref ?? "" });
    const readings = statements.filter(({ says }) => says.startsWith("measured"));
    expect(
      readings.map(({ is, daysLater, commit }) => [is, daysLater, commit?.author ?? "in the editor"]),
    ).toEqual([
      ["written", 18, "KT"],
      ["altered", 19, "JR"],
      ["altered", expect.any(Number), "in the editor"],
    ]);
    expect(readings[1]?.at).toMatchObject({
      left: { commit: readings[0]?.commit?.id, path: "diary.cotter" },
      right: { commit: readings[1]?.commit?.id, path: "diary.cotter" },
      side: "right",
      line: 2,
    });
    // A commit by its id, so that a comparison that is kept open goes on saying what it said.
    expect(readings[2]?.at).toMatchObject({
      left: { commit: readings[1]?.commit?.id, path: "diary.cotter" },
      right: { commit: null, uri },
    });
  });

  test("is refused with the reason", async () => {
    const hostile = await ask("cotter/compare", { from: "--output=/tmp/x", to: null });
    expect(hostile).toMatchObject({ is: "refused", why: "bad revision" });
    expect(await ask("cotter/compare", { from: "no-such-branch", to: null })).toMatchObject({
      why: "unknown revision",
    });
    expect(await ask("cotter/history", { ref: "not a path" })).toMatchObject({ why: "unclear" });
    editor.notify("cotter/trusted", { trusted: false });
    expect(await ask("cotter/commits", {})).toMatchObject({ is: "refused", why: "not trusted" });
    editor.notify("cotter/trusted", { trusted: true });
    editor.open("untitled:Untitled-1", 'vehicle "Another"\n');
    const unsaved = await editor.request("cotter/commits", { uri: "untitled:Untitled-1" });
    expect(unsaved).toMatchObject({ is: "refused", why: "not on disk" });
    const outside = await mkdtemp(path.join(tmpdir(), "cotter-outside-"));
    const log = uriOf(path.join(outside, "log.cotter"));
    editor.open(log, 'vehicle "Outside"\n');
    expect(await editor.request("cotter/commits", { uri: log })).toMatchObject({ why: "no repository" });
    await rm(outside, { recursive: true });
  });
});

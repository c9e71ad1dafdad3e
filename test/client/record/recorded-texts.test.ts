/** The text of a log at a commit, while there is a server to read it and while there is none. */
import { beforeEach, describe, expect, test, vi } from "vitest";
import type { TextDocumentContentProvider, Uri } from "vscode";
import { offerRecordedTexts, uriOfSide } from "../../../client/record/recorded-texts.ts";
import type { ShownBuild } from "../../../client/shown-build.ts";
import { EventEmitter, seen } from "../editor-stand-in.ts";

vi.mock("vscode", async () => await import("../editor-stand-in.ts"));

const SIDE = { commit: "1a32", path: "shed/diary.cotter", uri: null };

let answer: unknown;
let asked: unknown[];
let changes: EventEmitter<void>;
let shown: ShownBuild;
let provider: TextDocumentContentProvider;
beforeEach(() => {
  [answer, asked, changes] = [null, [], new EventEmitter<void>()];
  shown = {
    get isServed() {
      return answer !== null;
    },
    onDidChange: changes.event,
    askOf: (...words: unknown[]) => {
      asked.push(words);
      return Promise.resolve(answer);
    },
  } as unknown as ShownBuild;
  offerRecordedTexts(shown);
  provider = seen.provider as TextDocumentContentProvider;
});

const textOf = async (uri: Uri) => await provider.provideTextDocumentContent(uri, undefined as never);

describe("a recorded text", () => {
  test("is read by the server, by its commit and its path in the repository", async () => {
    answer = { is: "recorded", value: "day 2026-05-02\n" };
    expect(await textOf(uriOfSide(shown, "file:///log", SIDE))).toBe("day 2026-05-02\n");
    const { commit, path } = SIDE;
    expect(asked).toEqual([["file:///log", "cotter/recordedText", { commit, path }]]);
  });

  test("says that there is no server, and comes when there is one", async () => {
    const uri = uriOfSide(shown, null, SIDE);
    const changed: string[] = [];
    provider.onDidChange?.((each) => changed.push(each.toString()));
    expect(await textOf(uri)).toBe("# Cotter's server is not running.\n");
    expect(changed).toEqual([]);
    answer = { is: "recorded", value: "day 2026-05-02\n" };
    changes.fire();
    expect(changed).toEqual([uri.toString()]);
    expect(await textOf(uri)).toBe("day 2026-05-02\n");
    changes.fire();
    expect(changed).toHaveLength(1);
  });

  test("is refused in words, and empty before the first commit", async () => {
    answer = { is: "refused", why: "not trusted", message: "" };
    await expect(textOf(uriOfSide(shown, null, SIDE))).rejects.toThrow("only in a folder that you trust");
    expect(await textOf(uriOfSide(shown, null, { ...SIDE, commit: null }))).toBe("");
  });
});

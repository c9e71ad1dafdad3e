/** The server as an editor meets it: it speaks the protocol, and is a process wherever that may matter. */
import { mkdtemp, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import path from "node:path";
import { describe, expect, test } from "vitest";
import type { CheckReport } from "../../../server/reports/check.ts";
import { cotter } from "../../command-line/program.ts";
import type { ShownDiagnostic } from "./editor.ts";
import { Editor, uriOf } from "./editor.ts";

const samples = path.resolve("samples");
const roadster = path.join(samples, "roadster");

/** What `cotter check --json` says, in the terms of the protocol. */
async function checked(folder: string): Promise<readonly string[]> {
  const { out } = await cotter(["check", folder, "--json"]);
  const { complaints } = JSON.parse(out) as CheckReport;
  return complaints
    .map(({ file, from, to, code }) => {
      const range = `${from.line - 1}:${from.column - 1}-${to.line - 1}:${to.column - 1}`;
      return `${file} ${range} ${code}`;
    })
    .sort();
}

function shown(folder: string, files: Iterable<readonly [string, readonly ShownDiagnostic[]]>): string[] {
  return [...files]
    .flatMap(([uri, diagnostics]) =>
      diagnostics.map(({ range: { start, end }, code }) => {
        const file = uri.slice(uriOf(folder).length + 1);
        return `${file} ${start.line}:${start.character}-${end.line}:${end.character} ${code}`;
      }),
    )
    .sort();
}

const codes = (diagnostics: readonly ShownDiagnostic[]) => diagnostics.map(({ code }) => code);

describe("complaints in an editor", () => {
  test("are those of `cotter check`, for every file of the build, open or not", async () => {
    const editor = await Editor.start({ folders: [roadster] });
    const expected = await checked(roadster);
    await editor.untilTrue(() => shown(roadster, editor.diagnostics).length === expected.length);
    expect(shown(roadster, editor.diagnostics)).toEqual(expected);
    expect(await editor.stop()).toBe(0);
  });

  test("are the same where the editor asks for them", async () => {
    const editor = await Editor.start({
      program: "here",
      folders: [roadster],
      capabilities: { textDocument: { diagnostic: {} } },
    });
    const report = await editor.request<{
      items: { uri: string; items: ShownDiagnostic[]; resultId: string }[];
    }>("workspace/diagnostic", { previousResultIds: [] });
    const files = report.items.map(({ uri, items }) => [uri, items] as const);
    expect(shown(roadster, files)).toEqual(await checked(roadster));
    const previousResultIds = report.items.map(({ uri, resultId }) => ({ uri, value: resultId }));
    const again = await editor.request<{ items: { kind: string }[] }>("workspace/diagnostic", {
      previousResultIds,
    });
    expect(again.items.map(({ kind }) => kind)).toEqual(report.items.map(() => "unchanged"));
    expect(editor.diagnostics.size).toBe(0);
    expect(await editor.stop()).toBe(0);
  });

  test("appear and vanish as one types, also in the file that is not touched", async () => {
    const editor = await Editor.start({ program: "cotter", folders: [roadster] });
    const september = path.join(roadster, "diary/2026-09.cotter");
    const front = path.join(roadster, "parts/front.cotter");
    const [uri, definitions] = [uriOf(september), uriOf(front)];
    editor.open(uri, await readFile(september, "utf8"));
    editor.open(definitions, await readFile(front, "utf8"));
    await editor.until(uri, (diagnostics) => !codes(diagnostics).includes("unknown-record"));
    // `removed:` in line 8 loses a letter, and gets it back.
    editor.change(uri, 7, 2, 9, "remved");
    await editor.until(uri, (diagnostics) => codes(diagnostics).includes("unknown-record"));
    editor.change(uri, 7, 2, 8, "removed");
    await editor.until(uri, (diagnostics) => !codes(diagnostics).includes("unknown-record"));
    // A part loses its name: the diary, which was not touched, no longer knows it.
    const text = await readFile(front, "utf8");
    const line = text.split("\n").findIndex((each) => each.startsWith("part front.left.hub "));
    editor.change(definitions, line, 16, 19, "hob");
    await editor.until(uri, (diagnostics) => codes(diagnostics).includes("unknown-reference"));
    editor.change(definitions, line, 16, 19, "hub");
    await editor.until(uri, (diagnostics) => !codes(diagnostics).includes("unknown-reference"));
    expect(await editor.stop()).toBe(0);
  });

  test("follow the file on disk once it is closed", async () => {
    const folder = await mkdtemp(path.join(tmpdir(), "cotter log "));
    const file = path.join(folder, "log.cotter");
    await writeFile(file, 'vehicle "Halvorsen Sprint"\n');
    const editor = await Editor.start({ program: "here" });
    const uri = uriOf(file);
    editor.open(uri, 'vehicle "Halvorsen Sprint"\n  yaer: 1960\n');
    await editor.until(uri, (diagnostics) => codes(diagnostics).includes("unknown-record"));
    editor.notify("textDocument/didClose", { textDocument: { uri } });
    await editor.until(uri, (diagnostics) => diagnostics.length === 0);
    await rm(folder, { recursive: true });
    expect(await editor.stop()).toBe(0);
  });

  test("are the worst thousand of a file, and one word about the rest", async () => {
    const editor = await Editor.start({
      program: "here",
      capabilities: { textDocument: { diagnostic: {} } },
    });
    const uri = "untitled:damaged.cotter";
    // 700 unused gauges before 700 lines that cannot be read: the latter are worse.
    const unused = Array.from({ length: 700 }, (_, index) => `gauge g${index} "Gauge ${index}"`).join("\n");
    const unknown = Array.from({ length: 700 }, () => "  remvoed: disc\n").join("");
    editor.open(uri, `vehicle "Damaged"\n  past: unknown\n${unused}\nday 2026-05-02\n${unknown}`);
    const ask = (previousResultId?: string) =>
      editor.request<{ kind: string; resultId: string; items: ShownDiagnostic[] }>(
        "textDocument/diagnostic",
        { textDocument: { uri }, ...(previousResultId === undefined ? {} : { previousResultId }) },
      );
    const { items, resultId } = await ask();
    expect(items).toHaveLength(1001);
    expect(items.filter(({ code }) => code === "unknown-record")).toHaveLength(700);
    expect(items.at(-1)).toMatchObject({ code: "more-complaints", severity: 3 });
    expect(items.at(-1)?.message).toMatch(/^400 more complaints/);
    expect((await ask(resultId)).kind).toBe("unchanged");
    expect(await editor.stop()).toBe(0);
  });

  test("are graded as the settings say", async () => {
    const folder = await mkdtemp(path.join(tmpdir(), "cotter-"));
    const file = path.join(folder, "log.cotter");
    await writeFile(file, 'vehicle "Halvorsen Sprint"\n  yaer: 1960\n');
    const editor = await Editor.start({
      program: "here",
      folders: [folder],
      capabilities: { workspace: { configuration: true } },
      settings: { severity: { "unknown-record": "hint" } },
    });
    await editor.until(uriOf(file), ([first]) => first?.severity === 4);
    await rm(folder, { recursive: true });
    expect(await editor.stop()).toBe(0);
  });
});

describe("a session ends", () => {
  test("with status 1 where exit comes without shutdown", async () => {
    const editor = await Editor.start();
    editor.notify("exit", undefined);
    expect(await editor.exit).toBe(1);
  });

  test("when the editor's end of the line is closed", async () => {
    const editor = await Editor.start({ program: "cotter" });
    editor.hangUp();
    expect(await editor.exit).toBe(1);
  });
});

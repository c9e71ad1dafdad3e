import assert from "node:assert/strict";
import { execFileSync } from "node:child_process";
import { suite, test } from "mocha";
import * as vscode from "vscode";
import { eventually, openDiary, placeOf } from "../diary.ts";
import { gone, needsDriver, press, see, type } from "../driver.ts";

const LOG = `vehicle "Halvorsen Sprint"
  past: unknown

part front.left.disc "Front left disc"
  limit: thickness min 8.4 mm

day 2026-05-02
  Stripped the corner.
  measured: front.left.disc thickness 8.9 mm
`;
const READING = "thickness 8.9 mm";

suite("The record in git", () => {
  test("is compared with the build as it is now, down to the line", async function () {
    needsDriver(this);
    const { document } = await openRecorded("compared");
    await replace(document, "8.9", "8.5");
    void vscode.commands.executeCommand("cotter.compareWithRevision");
    await see("An evening in the workshop");
    await press("Enter");
    await see("reading of 2026-05-02 altered after the fact");
    await press("Home");
    await press("ArrowDown");
    await press("Enter");
    const { original, modified } = await shownDiff();
    assert.equal(modified.toString(), document.uri.toString());
    assert.equal(await textOf(original), LOG);
    await eventually(
      () => vscode.window.activeTextEditor?.selection.active.line,
      (line) => line === placeOf(document, "thickness 8.5 mm").line,
      "the cursor is at the altered line",
    );
    await vscode.commands.executeCommand("cotter.closeComparison");
    await gone("reading of 2026-05-02 altered after the fact");
    await vscode.commands.executeCommand("workbench.action.closeAllEditors");
  });

  test("has the history of the thing at the cursor, and shows what a commit changed", async function () {
    needsDriver(this);
    const editor = await openRecorded("remembered");
    const { document } = editor;
    await replace(document, "8.9", "8.8");
    commit(document.uri, "A slip of the pen", "2026-05-09");
    const place = placeOf(document, "front.left.disc thickness");
    const shown = await vscode.window.showTextDocument(document);
    const inside = place.translate(0, "front.left.d".length);
    shown.selection = new vscode.Selection(inside, inside);
    void vscode.commands.executeCommand("cotter.historyOfThing");
    await see("History of Front left disc (front.left.disc)");
    await see("A slip of the pen");
    await see("7 days after it tells of");
    await press("Enter");
    const { original, modified } = await shownDiff();
    assert.equal(await textOf(original), LOG);
    assert.equal(await textOf(modified), LOG.replace("8.9", "8.8"));
    await vscode.commands.executeCommand("workbench.action.closeAllEditors");
  });

  test("says in a hover that a fact was written later than its day", async () => {
    const { document } = await openRecorded("late");
    await replace(document, READING, `${READING}\n  cleaned: front.left.disc`);
    commit(document.uri, "From memory", "2026-05-12");
    const place = placeOf(document, "cleaned: front.left.disc").translate(0, 3);
    await eventually(
      () => hovered(document.uri, place),
      (text) => text.includes("Written 10 days later, on 2026-05-12, by JR"),
      "the hover knows when the fact was written",
    );
  });

  test("is missed with a plain word where there is none, and where there is no such revision", async function () {
    needsDriver(this);
    await openDiary("unrecorded", LOG);
    void vscode.commands.executeCommand("cotter.compareWithRevision");
    await see("This build is in no git repository");
    await vscode.commands.executeCommand("notifications.clearAll");
    await openRecorded("misnamed");
    void vscode.commands.executeCommand("cotter.compareWithRevision");
    await see("An evening in the workshop");
    await type("no-such-branch");
    await see("Compare with “no-such-branch”");
    await press("Enter");
    await see("There is no such revision.");
    await vscode.commands.executeCommand("notifications.clearAll");
    await vscode.commands.executeCommand("workbench.action.closeAllEditors");
  });
});

/** A build of one file in a repository of its own, committed on its day. */
async function openRecorded(name: string): Promise<vscode.TextEditor> {
  const editor = await openDiary(name, LOG);
  const { uri } = editor.document;
  git(uri, "init", "--quiet", "--initial-branch=main");
  git(uri, "config", "user.name", "JR");
  git(uri, "config", "user.email", "jr@bench.example");
  commit(uri, "An evening in the workshop", "2026-05-02");
  return editor;
}

function commit(log: vscode.Uri, message: string, day: string): void {
  git(log, "add", "--all");
  const at = `${day}T20:00:00Z`;
  git(log, "commit", "--quiet", "--no-verify", `--date=${at}`, "--message", message);
}

function git(log: vscode.Uri, ...words: readonly string[]): void {
  const folder = vscode.Uri.joinPath(log, "..").fsPath;
  execFileSync("git", ["-C", folder, ...words], { env: { ...process.env, GIT_CONFIG_NOSYSTEM: "1" } });
}

async function replace(document: vscode.TextDocument, words: string, others: string): Promise<void> {
  const start = placeOf(document, words);
  const edit = new vscode.WorkspaceEdit();
  edit.replace(document.uri, new vscode.Range(start, start.translate(0, words.length)), others);
  await vscode.workspace.applyEdit(edit);
  await document.save();
}

async function shownDiff(): Promise<vscode.TabInputTextDiff> {
  const input = () => vscode.window.tabGroups.activeTabGroup.activeTab?.input;
  const shown = await eventually(
    input,
    (tab) => tab instanceof vscode.TabInputTextDiff,
    "two texts are shown",
  );
  return shown as vscode.TabInputTextDiff;
}

async function textOf(uri: vscode.Uri): Promise<string> {
  return (await vscode.workspace.openTextDocument(uri)).getText();
}

async function hovered(uri: vscode.Uri, place: vscode.Position): Promise<string> {
  const hovers = await vscode.commands.executeCommand<vscode.Hover[]>(
    "vscode.executeHoverProvider",
    uri,
    place,
  );
  return hovers
    .flatMap(({ contents }) => contents)
    .map((content) => (typeof content === "string" ? content : content.value))
    .join("\n")
    .replaceAll("\\", "");
}

import assert from "node:assert/strict";
import { suite, test } from "mocha";
import * as vscode from "vscode";
import { complaintsWhen, openDiary } from "../diary.ts";
import { needsDriver, see } from "../driver.ts";

suite("In Restricted Mode", () => {
  test("a diary is checked as usual", async () => {
    assert.equal(vscode.workspace.isTrusted, false);
    const { document } = await openDiary("restricted", 'vehicle "Halvorsen Sprint"\n  yaer: 1960\n');
    await complaintsWhen(document.uri, (found) => found.length > 0);
  });

  test("the view says what is left out", async function () {
    needsDriver(this);
    await vscode.commands.executeCommand("cotter.asItStands.focus");
    await see("Restricted Mode: the diary is checked as usual.");
  });

  test("git is not started, and the comparison says why", async function () {
    needsDriver(this);
    await openDiary("uncompared", 'vehicle "Halvorsen Sprint"\n  past: unknown\n');
    void vscode.commands.executeCommand("cotter.compareWithRevision");
    await see("git is started only in a folder that you trust.");
    await vscode.commands.executeCommand("notifications.clearAll");
  });
});

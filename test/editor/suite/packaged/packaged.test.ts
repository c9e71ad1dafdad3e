import assert from "node:assert/strict";
import { suite, test } from "mocha";
import * as vscode from "vscode";
import { complaintsWhen, eventually, openDiary } from "../diary.ts";

suite("The package", () => {
  test("is installed, not read from its sources", () => {
    const extension = vscode.extensions.getExtension("cotter.cotter");
    assert.ok(extension, "it is not installed");
    assert.match(extension.extensionPath, /extensions[/\\]cotter\.cotter-\d/);
  });

  test("checks a diary, and opens a report", async () => {
    const { document } = await openDiary("packaged", 'vehicle "Halvorsen Sprint"\n  yaer: 1960\n');
    const complaints = await complaintsWhen(document.uri, (found) => found.length > 0);
    assert.ok(complaints.some(({ message }) => message.includes("yaer")));
    await vscode.commands.executeCommand("cotter.openCosts");
    await eventually(
      () => vscode.window.tabGroups.all.flatMap(({ tabs }) => tabs.map(({ label }) => label)),
      (titles) => titles.includes("Costs"),
      "the report of costs is open",
    );
  });
});

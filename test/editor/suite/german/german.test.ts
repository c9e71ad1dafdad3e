import assert from "node:assert/strict";
import { suite, test } from "mocha";
import * as vscode from "vscode";
import { openSample } from "../diary.ts";
import { needsDriver, see } from "../driver.ts";

suite("In an editor in German", () => {
  test("the views speak German", async function () {
    needsDriver(this);
    assert.equal(vscode.env.language, "de");
    await openSample("roadster/vehicle.cotter");
    await vscode.commands.executeCommand("cotter.asItStands.focus");
    await see("Fahrzeug");
    // Words of the client, and a day as one writes it.
    await see("freigegeben 8. Okt.");
    await see("bis 28. Nov.");
  });

  test("a command asks in German", async function () {
    needsDriver(this);
    void vscode.commands.executeCommand("cotter.startDiary");
    await see("Der Name des Fahrzeugs.");
    await vscode.commands.executeCommand("workbench.action.closeQuickOpen");
  });
});

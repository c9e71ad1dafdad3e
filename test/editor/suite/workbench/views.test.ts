import assert from "node:assert/strict";
import { suite, test } from "mocha";
import * as vscode from "vscode";
import { eventually, openSample } from "../diary.ts";
import { followFirstLink, judgeWebviews, needsDriver, see } from "../driver.ts";

/** Of each view, words that the roadster has in it. */
const views = {
  "cotter.asItStands": "Front",
  "cotter.stillOpen": "3 open",
  "cotter.toOrder": "34.40 GBP",
};

/** Of each panel, its title and words that the roadster has in it. */
const panels = {
  "cotter.openOrder": { title: "Order list", words: "Rubber bobbins" },
  "cotter.openTimeline": { title: "Build programme", words: "Build programme" },
  "cotter.openJoints": { title: "Torque sheet", words: "N.m" },
  "cotter.openOutstanding": { title: "Outstanding", words: "Outstanding" },
  "cotter.openCosts": { title: "Costs", words: "GBP" },
};

suite("The vehicle beside its diary", () => {
  for (const [view, words] of Object.entries(views)) {
    test(`stands in the view ${view}`, async function () {
      needsDriver(this);
      await openSample("roadster/vehicle.cotter");
      await vscode.commands.executeCommand(`${view}.focus`);
      await see(words);
    });
  }

  for (const [command, { title, words }] of Object.entries(panels)) {
    test(`stands in the panel ${title}, in which axe finds nothing wrong`, async function () {
      needsDriver(this);
      await openSample("roadster/vehicle.cotter");
      await vscode.commands.executeCommand(command);
      await eventually(openPanels, (titles) => titles.includes(title), `a panel ${title}`);
      await see(words);
      const judged = await eventually(judgeWebviews, (found) => found.length > 0, "a webview is seen");
      for (const { title: page, passes, violations } of judged) {
        assert.deepEqual(violations, [], `${page} of ${title}`);
        assert.ok(passes > 0, "axe has checked nothing");
      }
      await closePanels();
    });
  }

  test("leads from a panel to the line in the diary", async function () {
    needsDriver(this);
    await openSample("roadster/vehicle.cotter");
    await vscode.commands.executeCommand("cotter.openOrder");
    await see("Rubber bobbins");
    await vscode.commands.executeCommand("workbench.action.closeEditorsInOtherGroups");
    await followFirstLink();
    await eventually(
      () => vscode.window.activeTextEditor?.document.languageId,
      (language) => language === "cotter",
      "a diary is in front",
    );
    await closePanels();
  });
});

function openPanels(): readonly string[] {
  return vscode.window.tabGroups.all
    .flatMap(({ tabs }) => tabs)
    .filter(
      ({ input }) => input instanceof vscode.TabInputWebview && input.viewType.endsWith("cotter.report"),
    )
    .map(({ label }) => label);
}

async function closePanels(): Promise<void> {
  const tabs = vscode.window.tabGroups.all
    .flatMap((group) => group.tabs)
    .filter(({ input }) => input instanceof vscode.TabInputWebview);
  await vscode.window.tabGroups.close(tabs);
}

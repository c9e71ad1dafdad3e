import assert from "node:assert/strict";
import { suite, test } from "mocha";
import * as vscode from "vscode";
import { complaintsWhen, eventually, openDiary, workspaceFolder } from "../diary.ts";
import { needsDriver, press, see, type } from "../driver.ts";

const LOG = `vehicle "Halvorsen Sprint"
  past: unknown

part front.left.disc "Front left disc"
  limit: thickness min 8.4 mm

day 2026-05-02
  measured: front.left.disc thickness 8.9 mm
`;

/** Those that record.test.ts runs. */
const OF_THE_RECORD = ["compareWithRevision", "closeComparison", "historyOfThing"];

/** Those that views.test.ts runs. */
const OPENING = ["openOrder", "openTimeline", "openJoints", "openOutstanding", "openCosts"];

const deeds: Readonly<Record<string, () => Promise<void>>> = {
  newDay: async () => {
    const { document } = await openDiary("new_day", LOG);
    await vscode.commands.executeCommand("cotter.newDay");
    const today = new Date().toLocaleDateString("sv-SE");
    await textWhen(document, (text) => text.includes(`day ${today} 4 h`), "today has its day");
    await press("Escape");
    await vscode.commands.executeCommand("cotter.newDay");
    // An editor that is driven by a test shows no notification by itself.
    await vscode.commands.executeCommand("notifications.showList");
    await see(`Today, ${today}, has its day already.`);
    await vscode.commands.executeCommand("notifications.hideList");
    await textWhen(document, (text) => text.split(`day ${today}`).length === 2, "it has one day of today");
  },
  newPart: async () => {
    const { document } = await openDiary("new_part", LOG);
    void vscode.commands.executeCommand("cotter.newPart");
    await see("names joined by dots");
    await type("front.left.caliper");
    await press("Enter");
    await see("as you would say it in the workshop");
    await press("Enter");
    await textWhen(document, (text) => text.includes('part front.left.caliper "'), "the part has its block");
  },
  insertPhoto: async () => {
    const { document } = await openDiary("insert_photo", LOG);
    const photo = vscode.Uri.joinPath(workspaceFolder(), "roadster/photos/disc-sketch.png");
    const beside = vscode.Uri.joinPath(document.uri, "../photos/disc.png");
    await vscode.workspace.fs.copy(photo, beside, { overwrite: true });
    const editor = await vscode.window.showTextDocument(document);
    const end = new vscode.Position(7, 4);
    editor.selection = new vscode.Selection(end, end);
    void vscode.commands.executeCommand("cotter.insertPhoto");
    await see("Photos for the day");
    // Until the folder is listed, the dialogue writes over what one types.
    await see("..");
    await press("Control+A");
    await type(beside.fsPath);
    await see("disc.png");
    await press("Enter");
    await see("It may be left empty");
    await type("As it came off");
    await press("Enter");
    await textWhen(
      document,
      (text) => text.includes('photo: "photos/disc.png" "As it came off"'),
      "the day has its photo",
    );
  },
  checkReading: async () => {
    await openDiary("check_reading", LOG);
    void vscode.commands.executeCommand("cotter.checkReading");
    await see("Enter copies the result");
    // NIST SP 811, appendix B.9: 1 lbf.ft = 1.355818 N.m.
    await type("40 lbf.ft in N.m");
    await see("54.2");
    await press("Enter");
    const copied = () => vscode.env.clipboard.readText();
    await eventually(copied, (text) => text.includes("54.2"), "the result is copied");
  },
  saveReport: async () => {
    const { document } = await openDiary("save_report", LOG);
    await vscode.commands.executeCommand("cotter.openOutstanding");
    await see("Outstanding");
    void vscode.commands.executeCommand("cotter.saveReport");
    await savedBeside(document.uri);
  },
  saveBook: async () => {
    const { document } = await openDiary("save_book", LOG);
    void vscode.commands.executeCommand("cotter.saveBook");
    await savedBeside(document.uri);
  },
  startDiary: async () => {
    void vscode.commands.executeCommand("cotter.startDiary");
    await see("The vehicle's name.");
    await press("Control+A");
    await type("Brock Sprite");
    await press("Enter");
    await activeTextWhen((text) => text.startsWith('vehicle "Brock Sprite"'), "a first page is open");
    // The samples are diaries already, so it has a folder of its own, and saving asks nothing more.
    await vscode.commands.executeCommand("workbench.action.files.save");
    const file = vscode.Uri.joinPath(workspaceFolder(), "brock-sprite/build.cotter");
    await eventually(
      () => fileText(file),
      (text) => text.startsWith('vehicle "Brock Sprite"'),
      "the page is saved in a folder of its own",
    );
  },
  openExample: async () => {
    await vscode.commands.executeCommand("cotter.openExample");
    await activeTextWhen((text) => /^vehicle "/m.test(text) && /^hold /m.test(text), "the example is open");
  },
  restartServer: async () => {
    const { document } = await openDiary("restarted", LOG.replace("measured", "meassured"));
    await complaintsWhen(document.uri, (found) => found.length > 0);
    await vscode.commands.executeCommand("cotter.restartServer");
    const edit = new vscode.WorkspaceEdit();
    edit.replace(document.uri, new vscode.Range(7, 2, 7, 11), "measured");
    await vscode.workspace.applyEdit(edit);
    await complaintsWhen(document.uri, (found) => found.length === 0);
  },
};

suite("The command", () => {
  for (const [name, run] of Object.entries(deeds)) {
    test(`cotter.${name} does what it says`, async function () {
      needsDriver(this);
      await run();
      await vscode.commands.executeCommand("workbench.action.closeAllEditors");
    });
  }

  test("that the manifest names is each run by a test", () => {
    const manifest = vscode.extensions.getExtension("cotter.cotter")?.packageJSON as {
      contributes: { commands: { command: string }[] };
    };
    assert.deepEqual(
      manifest.contributes.commands.map(({ command }) => command).sort(),
      [...Object.keys(deeds), ...OPENING, ...OF_THE_RECORD].map((name) => `cotter.${name}`).sort(),
    );
  });
});

async function textWhen(
  document: vscode.TextDocument,
  isSo: (text: string) => boolean,
  what: string,
): Promise<void> {
  await eventually(() => document.getText(), isSo, what);
}

/** Empty while there is no such file. */
async function fileText(file: vscode.Uri): Promise<string> {
  return await vscode.workspace.fs.readFile(file).then(
    (bytes) => new TextDecoder().decode(bytes),
    () => "",
  );
}

async function activeTextWhen(isSo: (text: string) => boolean, what: string): Promise<void> {
  await eventually(() => vscode.window.activeTextEditor?.document.getText() ?? "", isSo, what);
}

/** Answers the dialogue that asks where to save: as it proposes, which is beside the log. Reads what was saved. */
async function savedBeside(log: vscode.Uri): Promise<void> {
  await see("Save the page");
  await press("Enter");
  const folder = vscode.Uri.joinPath(log, "..");
  const entries = await eventually(
    () => vscode.workspace.fs.readDirectory(folder),
    (found) => found.some(([name]) => name.endsWith(".html")),
    `a page is saved in ${folder.path}`,
  );
  const [name = ""] = entries.find(([each]) => each.endsWith(".html")) ?? [];
  const page = new TextDecoder().decode(
    await vscode.workspace.fs.readFile(vscode.Uri.joinPath(folder, name)),
  );
  if (!/^<!doctype html>/i.test(page) || !page.includes("Halvorsen Sprint"))
    throw new Error(`${name} is not the page of the build: ${page.slice(0, 200)}`);
}

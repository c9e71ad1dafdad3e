import assert from "node:assert/strict";
import { suite, test } from "mocha";
import * as vscode from "vscode";
import { complaintsWhen, eventually, openDiary, placeOf } from "../diary.ts";

const LOG = `vehicle "Halvorsen Sprint"
  past: unknown

part front.left.disc "Front left disc"
  limit: thickness min 8.4 mm

day 2026-05-02
  measured: front.left.disc thickness 8.9 mm
`;

suite("What the editor offers in a diary", () => {
  test("a quick fix puts a misspelt record right", async () => {
    const { document } = await openDiary("fixed", LOG.replace("measured", "meassured"));
    const [complaint] = await complaintsWhen(document.uri, (found) => found.length > 0);
    assert.ok(complaint);
    const actions = await vscode.commands.executeCommand<vscode.CodeAction[]>(
      "vscode.executeCodeActionProvider",
      document.uri,
      complaint.range,
    );
    const mend = actions.find(({ title }) => title === "Write measured");
    assert.ok(mend?.edit, `among ${actions.map(({ title }) => title).join("; ")}`);
    await vscode.workspace.applyEdit(mend.edit);
    assert.equal(document.getText(), LOG);
    await complaintsWhen(document.uri, (found) => found.length === 0);
  });

  test("completion names the parts of the vehicle", async () => {
    const { document } = await openDiary("completed", LOG.replace("front.left.disc thickness 8.9 mm", ""));
    const at = placeOf(document, "measured: ").translate(0, "measured: ".length);
    const { items } = await eventually(
      () =>
        vscode.commands.executeCommand<vscode.CompletionList>(
          "vscode.executeCompletionItemProvider",
          document.uri,
          at,
        ),
      (list) => list.items.length > 0,
      "something is offered",
    );
    const labels = items.map(({ label }) => (typeof label === "string" ? label : label.label));
    assert.ok(labels.includes("front.left.disc"), labels.join("; "));
  });

  test("a part that is renamed has its new name everywhere", async () => {
    const { document } = await openDiary("renamed", LOG);
    const edit = await vscode.commands.executeCommand<vscode.WorkspaceEdit>(
      "vscode.executeDocumentRenameProvider",
      document.uri,
      placeOf(document, "disc thickness"),
      "rotor",
    );
    await vscode.workspace.applyEdit(edit);
    assert.match(document.getText(), /^part front\.left\.rotor /m);
    assert.match(document.getText(), /measured: front\.left\.rotor thickness/);
    assert.doesNotMatch(document.getText(), /\bleft\.disc\b/);
  });

  test("hovering over a part tells its limit and its readings", async () => {
    const { document } = await openDiary("hovered", LOG);
    const hovers = await vscode.commands.executeCommand<vscode.Hover[]>(
      "vscode.executeHoverProvider",
      document.uri,
      placeOf(document, "disc thickness"),
    );
    const text = hovers
      .flatMap(({ contents }) => contents)
      .map((content) => (typeof content === "string" ? content : content.value))
      .join("\n");
    assert.match(text, /Front left disc/);
    assert.match(text, /8\.4/);
    assert.match(text, /8\.9/);
  });

  test("formatting lays the text out", async () => {
    const { document } = await openDiary("formatted", LOG.replace("  limit:", "      limit:"));
    const edits = await vscode.commands.executeCommand<vscode.TextEdit[]>(
      "vscode.executeFormatDocumentProvider",
      document.uri,
      { tabSize: 2, insertSpaces: true },
    );
    const edit = new vscode.WorkspaceEdit();
    edit.set(document.uri, edits);
    await vscode.workspace.applyEdit(edit);
    assert.equal(document.getText(), LOG);
  });
});

import assert from "node:assert/strict";
import { suite, test } from "mocha";
import * as vscode from "vscode";
import { codeOf, complaintsWhen, openDiary, workspaceFolder } from "../diary.ts";

suite("A diary in the editor", () => {
  test("starts the extension when it is opened", async () => {
    const editor = await openDiary("opened", 'vehicle "Opened"\n');
    assert.equal(editor.document.languageId, "cotter");
    const extension = vscode.extensions.getExtension("cotter.cotter");
    assert.ok(extension, "the extension is not installed");
    await extension.activate();
    assert.ok(extension.isActive);
  });

  test("gets a complaint about a misspelt record, which goes when the word is put right", async () => {
    const editor = await openDiary(
      "misspelt",
      [
        'vehicle "Misspelt"',
        "  past: unknown",
        "",
        'part front.disc "Front disc"',
        "",
        "day 2026-05-02",
        "  remvoed: front.disc",
        "",
      ].join("\n"),
    );
    const file = editor.document.uri;
    const complaints = await complaintsWhen(file, (found) => found.length > 0);
    assert.deepEqual(
      complaints.map((complaint) => complaint.range.start.line),
      [6],
    );

    const word = new vscode.Range(6, 2, 6, 9);
    await editor.edit((edit) => edit.replace(word, "removed"));
    await complaintsWhen(file, (found) => found.length === 0);
  });

  test("is read in every sample, and the complaints carry their codes", async () => {
    const files = await vscode.workspace.findFiles(
      new vscode.RelativePattern(workspaceFolder(), "{roadster,trials}/**/*.cotter"),
    );
    assert.ok(files.length > 0, "there are no samples");
    for (const file of files) {
      const document = await vscode.workspace.openTextDocument(file);
      assert.equal(document.languageId, "cotter");
    }
    // The roadster's story has real mistakes in it.
    const complaints = await new Promise<vscode.Diagnostic[]>((resolve) => {
      const look = () => {
        const found = files.flatMap((file) => vscode.languages.getDiagnostics(file));
        if (found.length === 0) return;
        listener.dispose();
        resolve(found);
      };
      const listener = vscode.languages.onDidChangeDiagnostics(look);
      look();
    });
    for (const complaint of complaints) {
      assert.match(codeOf(complaint), /^[a-z][a-z-]*$/);
      assert.equal(complaint.source, "cotter");
    }
  });
});

import path from "node:path";
import * as vscode from "vscode";

/** The folder that is open: a copy of the samples, which a test may change. */
export function workspaceFolder(): vscode.Uri {
  const [folder] = vscode.workspace.workspaceFolders ?? [];
  if (folder === undefined) throw new Error("No folder is open.");
  return folder.uri;
}

/** Writes a build of one file, in a folder of its own, and opens it. */
export async function openDiary(name: string, text: string): Promise<vscode.TextEditor> {
  const file = vscode.Uri.joinPath(workspaceFolder(), "written", name, `${path.basename(name)}.cotter`);
  await vscode.workspace.fs.writeFile(file, new TextEncoder().encode(text));
  return await vscode.window.showTextDocument(await vscode.workspace.openTextDocument(file));
}

/** Waits until the complaints about a file are as wanted, and answers with them. */
export function complaintsWhen(
  file: vscode.Uri,
  wanted: (complaints: readonly vscode.Diagnostic[]) => boolean,
): Promise<readonly vscode.Diagnostic[]> {
  return new Promise((resolve) => {
    const look = () => {
      const complaints = vscode.languages.getDiagnostics(file);
      if (!wanted(complaints)) return;
      listener.dispose();
      resolve(complaints);
    };
    const listener = vscode.languages.onDidChangeDiagnostics(look);
    look();
  });
}

/** The code of a complaint, without the link to its page. */
export function codeOf({ code }: vscode.Diagnostic): string {
  return String(typeof code === "object" ? code.value : code);
}

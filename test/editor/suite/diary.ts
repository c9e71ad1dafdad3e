import * as vscode from "vscode";

/** The folder that is open: a copy of the samples, which a test may change. */
export function workspaceFolder(): vscode.Uri {
  const [folder] = vscode.workspace.workspaceFolders ?? [];
  if (folder === undefined) throw new Error("No folder is open.");
  return folder.uri;
}

/** Writes a build of one file, in a folder of its own, and opens it. */
export async function openDiary(name: string, text: string): Promise<vscode.TextEditor> {
  const file = vscode.Uri.joinPath(workspaceFolder(), "written", name, `${name}.cotter`);
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

/** Opens a file of the sample. */
export async function openSample(path: string): Promise<vscode.TextEditor> {
  const file = vscode.Uri.joinPath(workspaceFolder(), path);
  return await vscode.window.showTextDocument(await vscode.workspace.openTextDocument(file));
}

/** Asks again until there is an answer that will do: what the editor shows follows what is written a moment later. */
export async function eventually<T>(
  ask: () => Thenable<T> | T,
  willDo: (answer: T) => boolean,
  what: string,
): Promise<T> {
  const until = Date.now() + 20_000;
  let answer = await ask();
  while (!willDo(answer)) {
    if (Date.now() > until) throw new Error(`It never came to this: ${what}.`);
    await new Promise((resolve) => setTimeout(resolve, 100));
    answer = await ask();
  }
  return answer;
}

/** The start of some words in a text. */
export function placeOf(document: vscode.TextDocument, words: string): vscode.Position {
  const at = document.getText().indexOf(words);
  if (at < 0) throw new Error(`“${words}” is not in ${document.uri.path}.`);
  return document.positionAt(at);
}

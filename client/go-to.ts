/** Leads to a line of a log. */
import type { TextEditor } from "vscode";
import { Range, TabInputWebview, TextEditorRevealType, ViewColumn, window, workspace } from "vscode";
import type { Spot } from "../server/language-server/protocol.ts";
import type { ShownBuild } from "./shown-build.ts";

export async function goTo(shown: ShownBuild, spot: Spot): Promise<TextEditor> {
  const { line, character } = spot;
  const document = await workspace.openTextDocument(shown.uriOf(spot));
  const range = new Range(line, character, line, character);
  const editor = await window.showTextDocument(document, { selection: range, viewColumn: columnForText() });
  editor.revealRange(range, TextEditorRevealType.InCenterIfOutsideViewport);
  return editor;
}

/** Where a text is shown already; else beside a panel rather than over it. */
function columnForText(): ViewColumn {
  const shown = window.activeTextEditor ?? window.visibleTextEditors.find(({ viewColumn }) => viewColumn);
  if (shown?.viewColumn !== undefined) return shown.viewColumn;
  const { activeTab } = window.tabGroups.activeTabGroup;
  return activeTab?.input instanceof TabInputWebview ? ViewColumn.Beside : ViewColumn.Active;
}

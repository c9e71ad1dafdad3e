/** *New day*: goes to today's day, or begins it behind the newest one. */
import type { TextEditor } from "vscode";
import { l10n, SnippetString, window } from "vscode";
import { goTo } from "../go-to.ts";
import type { ShownBuild } from "../shown-build.ts";
import { insertBlock } from "./insert-block.ts";
import { sayNoBuild } from "./no-build.ts";

export async function newDay(shown: ShownBuild): Promise<void> {
  const place = await shown.ask("cotter/dayPlace", {});
  if (place === null) return await sayNoBuild(shown);
  const { date, found, end } = place;
  if (found !== null) {
    await addLine(await goTo(shown, end));
    void window.showInformationMessage(
      l10n.t("Today, {0}, has its day already. The cursor is at its end.", date),
    );
    return;
  }
  const block = new SnippetString().appendText(`day ${date} `).appendPlaceholder("4").appendText(" h\n  ");
  await insertBlock(shown, end, block.appendTabstop(0));
}

/** What is written next would run on in the last line of the day otherwise. */
async function addLine(editor: TextEditor): Promise<void> {
  const { active } = editor.selection;
  if (editor.document.lineAt(active.line).isEmptyOrWhitespace) return;
  await editor.insertSnippet(new SnippetString("\n  "), active, {
    undoStopBefore: true,
    undoStopAfter: true,
    keepWhitespace: true,
  });
}

/** Shows a line of a log in the editor's own comparison of two texts. */
import { commands, l10n, Range, workspace } from "vscode";
import type { RecordedSide, TwoSided } from "../../server/language-server/protocol.ts";
import type { ShownBuild } from "../shown-build.ts";
import { counterpartLine } from "./counterpart-line.ts";
import { uriOfSide } from "./recorded-texts.ts";

/** @param log a log of the build */
export async function showTwoSided(
  shown: ShownBuild,
  log: string | null,
  { left, right, side, line }: TwoSided,
): Promise<void> {
  const [before, after] = await Promise.all(
    [left, right].map((each) => workspace.openTextDocument(uriOfSide(shown, log, each))),
  );
  if (before === undefined || after === undefined) return;
  const onRight = side === "right" ? line : counterpartLine(before.getText(), after.getText(), line);
  const name = right.path.replace(/^.*\//, "");
  const title = `${name} (${nameOf(left)} ↔ ${nameOf(right)})`;
  const selection = new Range(onRight, 0, onRight, 0);
  await commands.executeCommand("vscode.diff", before.uri, after.uri, title, { selection, preview: true });
}

const SHORT = 9;

function nameOf({ commit, uri }: RecordedSide): string {
  if (commit !== null) return commit.slice(0, SHORT);
  return uri === null ? l10n.t("nothing") : l10n.t("now");
}

/** *Check a reading*: an expression with units, worked out as one types, with the build's names. */
import type { InputBox } from "vscode";
import { env, InputBoxValidationSeverity, l10n, ThemeIcon, window } from "vscode";
import type { ShownBuild } from "../shown-build.ts";

export function checkReading(shown: ShownBuild): void {
  const box = window.createInputBox();
  const copy = { iconPath: new ThemeIcon("copy"), tooltip: l10n.t("Copy the result") };
  box.title = l10n.t("Check a reading");
  box.placeholder = "40 lbf.ft in N.m";
  box.prompt = l10n.t("An expression with units; names of the build may be used. Enter copies the result.");
  box.buttons = [copy];
  let result = "";
  const work = async () => {
    const expression = box.value;
    const answer = expression.trim() === "" ? null : await shown.ask("cotter/calculate", { expression });
    // A later letter has an answer of its own.
    if (expression !== box.value) return;
    result = answer === null || answer.failed ? "" : answer.text;
    box.validationMessage = answer === null ? undefined : worded(answer);
  };
  box.onDidChangeValue(() => void work());
  box.onDidTriggerButton(() => copyResult(box, result));
  box.onDidAccept(() => copyResult(box, result));
  box.onDidHide(() => box.dispose());
  box.show();
}

function worded({ text, notes, failed }: { text: string; notes: readonly string[]; failed: boolean }) {
  const severity = failed ? InputBoxValidationSeverity.Warning : InputBoxValidationSeverity.Info;
  return { message: [failed ? text : `= ${text}`, ...notes].join("\n"), severity };
}

function copyResult(box: InputBox, result: string): void {
  if (result === "") return;
  void env.clipboard.writeText(result);
  box.hide();
  window.setStatusBarMessage(l10n.t("Copied: {0}", result), 5000);
}

/** *New part*: asks what it is called, and writes its block beside those of its assembly. */
import { l10n, SnippetString, window } from "vscode";
import { quoted } from "../../grammar/quoted.ts";
import { goTo } from "../go-to.ts";
import type { ShownBuild } from "../shown-build.ts";
import { insertBlock } from "./insert-block.ts";
import { sayNoBuild } from "./no-build.ts";
import { faultOfPath, titleFromPath } from "./part-path.ts";

export async function newPart(shown: ShownBuild): Promise<void> {
  const path = await askPath();
  if (path === undefined) return;
  const place = await shown.ask("cotter/partPlace", { path });
  if (place === null) return await sayNoBuild(shown);
  if (place.taken !== null) {
    await goTo(shown, place.taken);
    void window.showInformationMessage(l10n.t("{0} is there already. The cursor is at it.", path));
    return;
  }
  const title = await window.showInputBox({
    title: l10n.t("What {0} is called", path),
    prompt: l10n.t("In plain words, as you would say it in the workshop."),
    value: titleFromPath(path),
  });
  if (title === undefined) return;
  const block = new SnippetString()
    .appendText(`part ${path} ${quoted(title)}\n  limit: `)
    .appendPlaceholder("thickness min 8.4 mm")
    .appendTabstop(0);
  await insertBlock(shown, place.end, block);
}

async function askPath(): Promise<string | undefined> {
  const text = await window.showInputBox({
    title: l10n.t("New part"),
    prompt: l10n.t("Where it is on the vehicle: names joined by dots."),
    placeHolder: "front.left.disc",
    validateInput: (typed) => {
      const fault = typed.trim() === "" ? undefined : faultOfPath(typed.trim());
      return fault === undefined
        ? undefined
        : l10n.t("“{0}” is no name: letters, digits and _ only, a letter first.", fault);
    },
  });
  const path = text?.trim() ?? "";
  return path === "" ? undefined : path;
}

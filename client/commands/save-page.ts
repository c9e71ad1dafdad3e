/** Pages that are kept: a report or the whole record, written where one says and shown in the browser. */
import type { Uri as UriType } from "vscode";
import { env, l10n, ProgressLocation, Uri, window, workspace } from "vscode";
import type { ReportName } from "../../server/language-server/protocol.ts";
import type { ShownBuild } from "../shown-build.ts";
import { sayNoBuild } from "./no-build.ts";

/** The dialogue asks before anything is overwritten. */
export async function saveReport(shown: ShownBuild, report: ReportName): Promise<void> {
  const made = await shown.ask("cotter/report", { report });
  if (made === null) await sayNoBuild(shown);
  else await savePage(shown, made.fileName, made.page);
}

export async function saveBook(shown: ShownBuild): Promise<void> {
  const title = l10n.t("Making the build book…");
  const made = await window.withProgress({ location: ProgressLocation.Notification, title }, () =>
    shown.ask("cotter/book", {}),
  );
  if (made === null) return await sayNoBuild(shown);
  const { missing } = made;
  const file = await savePage(shown, made.fileName, made.page);
  if (file === undefined || missing.length === 0) return;
  const details = missing.map(({ path, why }) => `${path}: ${why}`).join("\n");
  const words =
    missing.length === 1
      ? l10n.t("The book is without one photo. {0}", details)
      : l10n.t("The book is without {0} photos. {1}", missing.length, details);
  await window.showWarningMessage(words);
}

/** Where it went; undefined if it was not wanted after all. */
async function savePage(shown: ShownBuild, name: string, page: string): Promise<UriType | undefined> {
  const home = homeOf(shown);
  const file = await window.showSaveDialog({
    ...(home === undefined ? {} : { defaultUri: Uri.joinPath(home, name) }),
    filters: { [l10n.t("Page")]: ["html"] },
    title: l10n.t("Save the page"),
  });
  if (file === undefined) return undefined;
  await workspace.fs.writeFile(file, new TextEncoder().encode(page));
  const open = l10n.t("Open");
  const words = l10n.t("Saved as {0}. A browser prints it.", file.path.replace(/^.*\//, ""));
  void window.showInformationMessage(words, open).then(async (chosen) => {
    if (chosen === open && !(await env.openExternal(file))) await window.showTextDocument(file);
  });
  return file;
}

function homeOf(shown: ShownBuild): UriType | undefined {
  const folder = shown.overview === undefined ? undefined : shown.uriOf({ uri: shown.overview.folder });
  if (folder !== undefined && folder.scheme !== "untitled" && folder.path !== "") return folder;
  return workspace.workspaceFolders?.[0]?.uri;
}

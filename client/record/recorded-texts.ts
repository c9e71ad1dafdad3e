/** Logs as they were at a commit, as texts that the editor can show: read by the server, and never changed. */
import type { Disposable, Uri as UriType } from "vscode";
import { Uri, workspace } from "vscode";
import type { RecordedSide } from "../../server/language-server/protocol.ts";
import type { ShownBuild } from "../shown-build.ts";
import { refusalWords } from "./refusal-words.ts";

const SCHEME = "cotter-record";

/** What a URI of such a text holds; without a commit the text is empty. */
interface Query {
  /** A log of the build. */
  readonly log: string | null;
  readonly commit: string | null;
}

/** @param log a log of the build */
export function uriOfSide(shown: ShownBuild, log: string | null, side: RecordedSide): UriType {
  const { commit, file, uri } = side;
  if (uri !== null) return shown.uriOf({ uri });
  const query: Query = { log, commit };
  return Uri.from({ scheme: SCHEME, path: `/${file}`, query: JSON.stringify(query) });
}

export function offerRecordedTexts(shown: ShownBuild): Disposable {
  return workspace.registerTextDocumentContentProvider(SCHEME, {
    provideTextDocumentContent: async ({ path, query }) => {
      const { log, commit } = JSON.parse(query) as Query;
      if (commit === null) return "";
      const answer = await shown.askOf(log, "cotter/recordedText", { commit, file: path.slice(1) });
      if (answer?.is === "refused") throw new Error(refusalWords(answer));
      return answer?.value ?? "";
    },
  });
}

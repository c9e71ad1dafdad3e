/** Logs as they were at a commit, as texts that the editor can show: read by the server, and never changed. */
import type { Uri as UriType } from "vscode";
import { Disposable, EventEmitter, Uri, workspace } from "vscode";
import type { RecordedSide } from "../../server/language-server/protocol.ts";
import { noBuildWords } from "../commands/no-build.ts";
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
  const { commit, path, uri } = side;
  if (uri !== null) return shown.uriOf({ uri });
  const query: Query = { log, commit };
  return Uri.from({ scheme: SCHEME, path: `/${path}`, query: JSON.stringify(query) });
}

export function offerRecordedTexts(shown: ShownBuild): Disposable {
  const changed = new EventEmitter<UriType>();
  /** Asked for while nobody could answer. */
  const unanswered = new Map<string, UriType>();
  const askAgain = () => {
    const uris = [...unanswered.values()];
    unanswered.clear();
    for (const uri of uris) changed.fire(uri);
  };
  const provider = {
    onDidChange: changed.event,
    provideTextDocumentContent: async (uri: UriType) => {
      const { log, commit } = JSON.parse(uri.query) as Query;
      if (commit === null) return "";
      const answer = await shown.askOf(log, "cotter/recordedText", { commit, path: uri.path.slice(1) });
      if (answer?.is === "refused") throw new Error(refusalWords(answer));
      if (answer !== null) return answer.value;
      // Said in the text itself, as a comment of a log: only a text that is shown can be replaced later.
      unanswered.set(uri.toString(), uri);
      return `# ${noBuildWords(shown)}\n`;
    },
  };
  return Disposable.from(
    changed,
    shown.onDidChange(askAgain),
    workspace.registerTextDocumentContentProvider(SCHEME, provider),
  );
}

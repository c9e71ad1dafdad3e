/** The server's surroundings in a worker of a browser, where every file is the editor's. */
import type { Asking } from "./editor-files.ts";
import { editorFiles } from "./editor-files.ts";
import type { Host } from "./host.ts";
import { today } from "./today.ts";

export function browserHost(editor: Asking): Host {
  return {
    files: editorFiles(editor),
    today,
    now: () => performance.now(),
    // Twice: the connection takes one message from its queue in each turn.
    turn: () => new Promise((resolve) => setTimeout(() => setTimeout(resolve))),
    later: (milliseconds, callback) => {
      const waiting = setTimeout(callback, milliseconds);
      return () => clearTimeout(waiting);
    },
  };
}

/** The server's surroundings in a process of Node. */
import type { IsoDate } from "../quantities/dates.ts";
import type { Host } from "./host.ts";
import { filesByUri } from "./node-files.ts";

export const nodeHost: Host = {
  files: filesByUri,
  today: () => {
    const now = new Date();
    const two = (figure: number) => String(figure).padStart(2, "0");
    return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}` as IsoDate;
  },
  now: () => performance.now(),
  // Twice: the message that waits behind the one at hand is handled between the two.
  turn: () => new Promise((resolve) => setImmediate(() => setImmediate(resolve))),
  later: (milliseconds, callback) => {
    if (milliseconds === 0) {
      const waiting = setImmediate(callback);
      return () => clearImmediate(waiting);
    }
    const waiting = setTimeout(callback, milliseconds);
    return () => clearTimeout(waiting);
  },
};

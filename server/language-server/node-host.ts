/** The server's surroundings in a process of Node. */
import type { Host } from "./host.ts";
import { filesByUri, pathOf } from "./node-files.ts";
import { today } from "./today.ts";

export const nodeHost: Host = {
  files: filesByUri,
  today,
  now: () => performance.now(),
  // Twice: the message that waits behind the one at hand is handled between the two.
  turn: () => new Promise((resolve) => setImmediate(() => setImmediate(resolve))),
  readPhotos: async (folder, photos) => {
    const path = pathOf(folder);
    const notHere = { is: "missing", why: "the build is not in a folder of this machine" } as const;
    if (path === undefined) return new Map(photos.map((photo) => [photo, notHere]));
    const { readPhotos } = await import("../workspace/pictures/photos.ts");
    return readPhotos(path, photos);
  },
  recordOf: async (folder) => {
    const path = pathOf(folder);
    if (path === undefined) return undefined;
    const { BuildRecord } = await import("../history/build-record.ts");
    return new BuildRecord(path);
  },
  later: (milliseconds, callback) => {
    if (milliseconds === 0) {
      const waiting = setImmediate(callback);
      return () => clearImmediate(waiting);
    }
    const waiting = setTimeout(callback, milliseconds);
    return () => clearTimeout(waiting);
  },
};

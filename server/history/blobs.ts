/** The contents of files as git keeps them, many at once. */
import type { GitFault } from "./git-fault.ts";
import { isGitFault } from "./git-fault.ts";
import { runGit } from "./git-process.ts";

/** Contents by their ids; those that git does not have are left out. */
export async function readBlobs(
  folder: string,
  ids: readonly string[],
  signal?: AbortSignal,
): Promise<ReadonlyMap<string, Buffer> | GitFault> {
  const wanted = [...new Set(ids)];
  if (wanted.length === 0) return new Map();
  const input = wanted.map((id) => `${id}\n`).join("");
  const answer = await runGit(folder, ["cat-file", "--batch"], { input, signal });
  if (isGitFault(answer)) return answer;
  if (answer.status !== 0) return { fault: "failed", message: answer.error };
  return parseBatch(answer.out);
}

const LINE_FEED = 10;

/** `ID blob SIZE`, a line feed, that many bytes, a line feed; `ID missing` for what is not there. */
function parseBatch(out: Buffer): ReadonlyMap<string, Buffer> {
  const blobs = new Map<string, Buffer>();
  for (let at = 0; at < out.length; ) {
    const end = out.indexOf(LINE_FEED, at);
    if (end < 0) break;
    const [id = "", kind, size] = out.toString("latin1", at, end).split(" ");
    at = end + 1;
    if (kind !== "blob") continue;
    const length = Number(size);
    blobs.set(id, out.subarray(at, at + length));
    at += length + 1;
  }
  return blobs;
}

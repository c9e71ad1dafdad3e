/** One log as it was at a commit. */
import type { Commit } from "./commit.ts";
import type { GitFault } from "./git-fault.ts";
import { isGitFault } from "./git-fault.ts";
import { isLog } from "./log-path.ts";
import type { Repository } from "./repository.ts";

/** @param path from the root of the repository; @returns empty where there was no such log */
export async function recordedFile(
  repository: Repository,
  commit: Commit,
  path: string,
): Promise<string | GitFault> {
  if (!isLog(path)) return "";
  const files = await repository.files(commit);
  if (isGitFault(files)) return files;
  const found = files.find((file) => file.path === path);
  if (found === undefined) return "";
  const contents = await repository.contents([found.blob]);
  if (isGitFault(contents)) return contents;
  return contents.get(found.blob)?.toString("utf8") ?? "";
}

/** One log as it was at a commit. */
import type { Commit } from "./commit.ts";
import type { GitFault } from "./git-fault.ts";
import { isGitFault } from "./git-fault.ts";
import { isLog } from "./recorded-build.ts";
import type { RecordedFile, Repository } from "./repository.ts";

/** @param file from the build's folder, or from the root of the repository; @returns empty where there was none */
export async function recordedFile(
  repository: Repository,
  commit: Commit,
  file: string,
): Promise<string | GitFault> {
  const files = await repository.files(commit);
  if (isGitFault(files)) return files;
  const found = findLog(files, repository.prefix, file);
  if (found === undefined) return "";
  const contents = await repository.contents([found.blob]);
  if (isGitFault(contents)) return contents;
  return contents.get(found.blob)?.toString("utf8") ?? "";
}

/** Where it is now; else, of a build that has moved, the only log that ends in that path. */
function findLog(files: readonly RecordedFile[], prefix: string, file: string): RecordedFile | undefined {
  const logs = files.filter(({ path }) => isLog(path));
  const here = logs.find(({ path }) => path === prefix + file) ?? logs.find(({ path }) => path === file);
  if (here !== undefined) return here;
  const [only, another] = logs.filter(({ path }) => path.endsWith(`/${file}`));
  return another === undefined ? only : undefined;
}

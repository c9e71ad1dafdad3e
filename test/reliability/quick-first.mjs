// The order of the test files where each change has them run until the first that fails: vitest begins with those that
// take longest, so that nearly every change would have the longest run in vain.

/** The longest that each file was seen to take: one that was broken off took less than it would have. */
const longest = new Map();

export class QuickFirst {
  #cache;

  constructor({ cache, config }) {
    this.#cache = (file) => cache.getFileTestResults(`:${file.slice(config.root.length + 1)}`);
  }

  shard(files) {
    return files;
  }

  sort(files) {
    for (const { moduleId } of files)
      longest.set(moduleId, Math.max(longest.get(moduleId) ?? 0, this.#cache(moduleId)?.duration ?? 0));
    return files.toSorted((one, other) => longest.get(one.moduleId) - longest.get(other.moduleId));
  }
}

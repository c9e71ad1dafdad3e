/** Whether a file of a repository is a log: hidden folders and `node_modules` are left out, as on disk. */
export function isLog(path: string): boolean {
  return path.endsWith(".cotter") && !/(?:^|\/)(?:\.[^/]*|node_modules)\//.test(path);
}

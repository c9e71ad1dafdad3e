/**
 * Patterns of files, as the Language Server Protocol has them for what is done with files (`**`, `*`, `?`, `{a,b}`). The
 * client library takes a package for this that knows far more; the bundles have this in its place, and weigh less.
 */
export class Minimatch {
  private readonly pattern: RegExp;

  constructor(glob: string, { nocase = false }: { readonly nocase?: boolean } = {}) {
    this.pattern = new RegExp(`^${sourceOf(glob)}$`, nocase ? "i" : "");
  }

  makeRe(): RegExp {
    return this.pattern;
  }

  /** @param path with `/` between its names */
  match(path: string): boolean {
    return this.pattern.test(path);
  }
}

const PARTS: Readonly<Record<string, string>> = {
  "**/": "(?:[^/]*/)*",
  "**": ".*",
  "*": "[^/]*",
  "?": "[^/]",
  "{": "(?:",
  "}": ")",
  ",": "|",
};

function sourceOf(glob: string): string {
  return glob.replace(
    /\*\*\/|\*\*|[*?{},]|[^*?{},]+/g,
    (part) => PARTS[part] ?? part.replace(/[.+^$()|[\]\\-]/g, "\\$&"),
  );
}

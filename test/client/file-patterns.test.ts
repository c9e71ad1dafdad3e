/** Patterns of files, against the package that the client library is made with. */
import { createRequire } from "node:module";
import fc from "fast-check";
import { expect, test } from "vitest";
import { Minimatch } from "../../client/file-patterns.ts";
import { FILE_OPERATIONS } from "../../server/language-server/files.ts";

type Matching = new (
  glob: string,
  options: { readonly dot: boolean },
) => { readonly match: (path: string) => boolean };

const library = new URL("../../node_modules/vscode-languageclient/lib/node/main.js", import.meta.url);
const ofLibrary = createRequire(library);
const { Minimatch: Judge } = ofLibrary("minimatch") as { readonly Minimatch: Matching };

const globs = FILE_OPERATIONS.filters.map(({ pattern }) => pattern.glob);

test.each(globs)("%s means the same, whatever the path", (glob) => {
  const [own, judge] = [new Minimatch(glob), new Judge(glob, { dot: true })];
  const name = fc.oneof(
    fc.constantFrom(
      "build.cotter",
      ".cotter",
      "a.cotter.bak",
      "disc.png",
      "disc.PNG",
      "IMG.HEIC",
      "png",
      "x.webp",
    ),
    fc.string({ minLength: 1, maxLength: 6 }).filter((text) => !/[/\\\n\r\u2028\u2029]|^\.{1,2}$/.test(text)),
  );
  const path = fc.array(name, { minLength: 1, maxLength: 4 }).map((names) => `/${names.join("/")}`);
  fc.assert(
    fc.property(path, (each) => {
      expect(own.match(each)).toBe(judge.match(each));
    }),
  );
});

test("the patterns tell logs from photos and from all else", () => {
  const paths = ["/a/build.cotter", "/a/photos/disc.PNG", "/a/notes.txt"];
  const matched = globs.map((glob) => paths.filter((path) => new Minimatch(glob).match(path)));
  expect(matched).toEqual([["/a/build.cotter"], ["/a/photos/disc.PNG"], paths]);
});

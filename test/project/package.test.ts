/** What the package for the editor holds, from the build that `npm test` has just made. */
import { readdirSync, readFileSync } from "node:fs";
import path from "node:path";
import { fileURLToPath } from "node:url";
import { deflateRawSync } from "node:zlib";
import { describe, expect, it } from "vitest";

const root = fileURLToPath(new URL("../../", import.meta.url));
const read = (file: string) => readFileSync(path.join(root, file));

/** Everything but the parts of the programs, whose names change with their content. */
const NAMED = [
  "CHANGELOG.md",
  "LICENSE",
  "dist/THIRD-PARTY-NOTICES.txt",
  "dist/browser/client.js",
  "dist/browser/server.js",
  "dist/client.cjs",
  "dist/cotter.cjs",
  "dist/readme.md",
  "dist/server.cjs",
  "grammar/generated/cotter.tmLanguage.json",
  "grammar/generated/language-configuration.json",
  "l10n/bundle.l10n.de.json",
  "media/icon.png",
  "media/log-dark.svg",
  "media/log-light.svg",
  "media/report.css",
  "media/report.js",
  "media/vehicle.svg",
  "media/walkthrough/day.md",
  "media/walkthrough/example.cotter",
  "media/walkthrough/example.md",
  "media/walkthrough/open.md",
  "media/walkthrough/own.md",
  "media/walkthrough/programme.md",
  "package.json",
  "package.nls.de.json",
  "package.nls.json",
];

const PART = /^dist\/parts\/[\w-]+-[A-Z0-9]{8}\.cjs$/;

/** The files that the list for vsce lets in: all is ignored, and each line lets in a file, or several of one folder. */
function packaged(): readonly string[] {
  const [ignored, ...lines] = read("dist/packaged.txt").toString().trim().split("\n").slice(1);
  if (ignored !== "**") throw new Error("the list does not begin by ignoring everything");
  return lines.flatMap((line) => {
    const pattern = /^!([^*]*?)([^/]*)$/.exec(line);
    if (pattern === null) throw new Error(`the list has a line of another kind: ${line}`);
    const [, folder = "", name = ""] = pattern;
    const wanted = new RegExp(`^${name.replaceAll(".", "\\.").replaceAll("*", ".*")}$`);
    return readdirSync(path.join(root, folder))
      .filter((entry) => wanted.test(entry))
      .map((entry) => folder + entry);
  });
}

/** The parts that a program's file asks for. */
function asked(file: string): readonly string[] {
  const requires = read(file)
    .toString()
    .matchAll(/require\("(\.{1,2}\/[^"]+)"\)/g);
  return [...requires].map(([, part = ""]) => path.posix.join(path.posix.dirname(file), part));
}

describe("The package", () => {
  const files = packaged();

  it("holds these files and the parts of its programs, and no other", () => {
    expect(files.filter((file) => !PART.test(file)).sort()).toEqual(NAMED);
  });

  it("holds no part that nothing in it asks for", () => {
    const used = new Set(files.filter((file) => /\.cjs$/.test(file)).flatMap(asked));
    expect(files.filter((file) => PART.test(file) && !used.has(file))).toEqual([]);
  });

  it("holds every part that the extension, its server and the check of a task ask for", () => {
    const held = new Set(files);
    const lacking = files
      .filter((file) => /\.cjs$/.test(file) && file !== "dist/cotter.cjs")
      .flatMap(asked)
      .filter((part) => !held.has(part));
    // The table of commands names those of the command line, each loaded when it is called.
    expect(
      lacking.filter((part) => !/^dist\/parts\/[a-z]+(?:-[a-z]+)*-[A-Z0-9]{8}\.cjs$/.test(part)),
    ).toEqual([]);
  });

  it("is small enough to be smaller than a megabyte", () => {
    // A zip of it: each file on its own, with some 150 bytes for its entries. The programs are here as they are built
    // every day; for the package they are made smaller by a twentieth, and the run of the packaged extension weighs it.
    const bytes = files.reduce((sum, file) => sum + deflateRawSync(read(file)).length + 150, 0);
    expect(bytes).toBeLessThan(1.08e6);
  });

  it("has a readme that shows on the extension's page: no picture, and no link into the project", () => {
    const readme = read("dist/readme.md").toString();
    const whole = read("README.md").toString();
    expect(whole).toMatch(/<picture>/);
    expect(readme).not.toMatch(/<picture|<img|!\[|<!--/);
    expect([...readme.matchAll(/\]\((?!https?:)([^)]*)\)/g)].map(([, target]) => target)).toEqual([]);
    const headings = (text: string) => text.split("\n").filter((line) => /^#+ /.test(line));
    expect(headings(readme)).toEqual(headings(whole));
    const leads = [...whole.matchAll(/^(.*):\n\n<picture>/gm)].map(([, lead]) => `${lead}.`);
    expect(leads.length).toBeGreaterThan(0);
    expect(leads.filter((lead) => !readme.includes(lead))).toEqual([]);
  });

  it("carries no source map and no path of the machine that made it", () => {
    for (const file of files.filter((each) => /\.c?js$/.test(each))) {
      const text = read(file).toString();
      expect(text.includes("sourceMappingURL=data:"), file).toBe(false);
      expect(text.includes(root), file).toBe(false);
    }
  });
});

describe("The manifest for a marketplace", () => {
  const manifest = JSON.parse(read("package.json").toString());
  const words = JSON.parse(read("package.nls.json").toString());

  it("says what the extension is, whose, and under which terms", () => {
    expect(words.description.length).toBeGreaterThan(40);
    for (const key of ["name", "displayName", "version", "publisher", "license", "icon"])
      expect(manifest[key], key).toMatch(/\S/);
    expect(manifest.categories.length).toBeGreaterThan(0);
    // A marketplace takes thirty at the most.
    expect(manifest.keywords.length).toBeGreaterThan(0);
    expect(manifest.keywords.length).toBeLessThanOrEqual(30);
    expect(manifest.galleryBanner.color).toMatch(/^#[0-9a-f]{6}$/);
  });

  it("has an icon of 128 pixels or more, square", () => {
    const icon = read(manifest.icon);
    // PNG (W3C), 11.2.1: width and height are the first two fields of IHDR.
    const [width, height] = [icon.readUInt32BE(16), icon.readUInt32BE(20)];
    expect(width).toBe(height);
    expect(width).toBeGreaterThanOrEqual(128);
  });

  it("states where it runs: Restricted Mode, virtual workspaces, the browser", () => {
    expect(manifest.capabilities.untrustedWorkspaces.supported).toBe("limited");
    expect(manifest.capabilities.virtualWorkspaces.supported).toBe("limited");
    expect(manifest.main).toBe("./dist/client.cjs");
    expect(manifest.browser).toBe("./dist/browser/client.js");
    // An extension host in a browser refuses ES modules.
    expect(manifest.type).toBeUndefined();
  });
});

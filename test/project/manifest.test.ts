import { existsSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { VERSION } from "../../server/language-server/version.ts";

const read = (file: string) => readFileSync(new URL(`../../${file}`, import.meta.url), "utf8");
const manifest = JSON.parse(read("package.json"));

describe("The lock file", () => {
  const lock: { packages: Record<string, { resolved?: string; integrity?: string; link?: boolean }> } =
    JSON.parse(read("package-lock.json"));
  const packages = Object.entries(lock.packages).filter(([folder]) => folder !== "");

  it("names no registry, so that any mirror serves", () => {
    expect(packages.filter(([, { resolved }]) => resolved !== undefined)).toEqual([]);
  });

  it("says of every package what its content must be", () => {
    expect(packages.filter(([, { integrity }]) => integrity === undefined)).toEqual([]);
  });
});

describe("The manifest", () => {
  it("asks for exact versions", () => {
    for (const version of Object.values<string>(manifest.devDependencies)) {
      expect(version).toMatch(/^\d+\.\d+\.\d+$/);
    }
  });

  it("has the version that the programs say", () => {
    expect(VERSION).toBe(manifest.version);
  });

  it("needs no package at run time: all is bundled", () => {
    expect(manifest.dependencies).toBeUndefined();
  });

  it("takes its types from the oldest editor that it supports", () => {
    expect(manifest.engines.vscode).toBe(`^${manifest.devDependencies["@types/vscode"]}`);
  });

  it.each<string>([
    manifest.icon,
    ...manifest.contributes.languages.map((language: { configuration: string }) => language.configuration),
    ...manifest.contributes.grammars.map((grammar: { path: string }) => grammar.path),
  ])("names a file that is there: %s", (file) => {
    expect(existsSync(new URL(`../../${file}`, import.meta.url))).toBe(true);
  });
});

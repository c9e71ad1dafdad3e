import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";
import { settingSchema } from "../../server/language-server/setting-schema.ts";

const manifestFile = fileURLToPath(new URL("../../package.json", import.meta.url));
const wordsFile = fileURLToPath(new URL("../../package.nls.json", import.meta.url));
const WORDED = new Set(["description", "markdownDescription"]);

/** The schema with keys for its words, as `package.nls.json` and its translations hold them, and those words. */
function withKeys(schema: object): { readonly schema: unknown; readonly words: Record<string, string> } {
  const words: Record<string, string> = {};
  const keyed = (value: unknown, key: string): unknown => {
    if (Array.isArray(value) || typeof value !== "object" || value === null) return value;
    return Object.fromEntries(
      Object.entries(value).map(([name, inner]) => {
        if (WORDED.has(name) && typeof inner === "string") {
          words[key] = inner;
          return [name, `%${key}%`];
        }
        const isLevel = name === "properties";
        return [name, keyed(inner, isLevel ? key : `${key}.${name.replace(/^cotter\./, "")}`)];
      }),
    );
  };
  return { schema: keyed(schema, "setting"), words };
}

describe("The manifest", () => {
  const { schema, words } = withKeys(settingSchema());

  it("declares the settings as they are read", async () => {
    const manifest = JSON.parse(readFileSync(manifestFile, "utf8"));
    manifest.contributes.configuration = schema;
    await expect(`${JSON.stringify(manifest, undefined, 2)}\n`).toMatchFileSnapshot(manifestFile);
  });

  it("takes their words from where translations take them", async () => {
    const all: Record<string, string> = JSON.parse(readFileSync(wordsFile, "utf8"));
    const others = Object.entries(all).filter(([key]) => !key.startsWith("setting."));
    const fresh = { ...Object.fromEntries(others), ...words };
    await expect(`${JSON.stringify(fresh, undefined, 2)}\n`).toMatchFileSnapshot(wordsFile);
  });
});

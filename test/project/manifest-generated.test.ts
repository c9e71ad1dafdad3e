import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";
import { settingSchema } from "../../server/language-server/setting-schema.ts";

const file = fileURLToPath(new URL("../../package.json", import.meta.url));

describe("The manifest", () => {
  it("declares the settings as they are read", async () => {
    const manifest = JSON.parse(readFileSync(file, "utf8"));
    manifest.contributes.configuration = settingSchema();
    await expect(`${JSON.stringify(manifest, undefined, 2)}\n`).toMatchFileSnapshot(file);
  });
});

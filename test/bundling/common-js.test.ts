/** A bundled ES module as CommonJS with short helpers gives what it gave. */
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import { tmpdir } from "node:os";
import path from "node:path";
import { afterAll, expect, it } from "vitest";

const { commonJs, withShortHelpers } = (await import("../../bundling/common-js.mjs" as string)) as {
  commonJs: (text: string) => Promise<string>;
  withShortHelpers: (code: string) => string;
};
const scratch = mkdtempSync(path.join(tmpdir(), "cotter-common-js-"));
afterAll(() => rmSync(scratch, { recursive: true }));

async function loaded(name: string, text: string): Promise<Record<string, unknown>> {
  const file = path.join(scratch, `${name}.cjs`);
  writeFileSync(file, await commonJs(text));
  return createRequire(file)(file) as Record<string, unknown>;
}

await loaded("late", "export const late = 3;");

it("gives names as they are when they are asked for, those of another module too", async () => {
  const counter = await loaded(
    "counter",
    "let count = 0; const more = () => ++count; export { count as c, more };",
  );
  const { c, more } = await loaded("user", 'import { c, more } from "./counter.cjs"; export { c, more };');
  expect([counter.c, c]).toEqual([0, 0]);
  (more as () => void)();
  expect([counter.c, Object.keys(counter)]).toEqual([1, ["c", "more"]]);
});

it("takes what Node brings as a whole, by its names and both", async () => {
  const given = await loaded(
    "built-in",
    'import path, { sep } from "node:path"; import * as fs from "node:fs"; export { path, sep }; export const read = fs.readFileSync;',
  );
  expect([given.path, given.sep]).toEqual([path, path.sep]);
  expect(given.read).toBeTypeOf("function");
});

it("loads late what is imported late", async () => {
  const { load } = await loaded("early", 'export const load = () => import("./late.cjs");');
  expect(await (load as () => Promise<unknown>)()).toHaveProperty("late", 3);
});

it("stops the build where another helper is asked for", async () => {
  await expect(commonJs('export * from "./late.cjs";')).rejects.toThrow("no short helper");
  expect(() => withShortHelpers("const module2 = __commonJS({});")).toThrow("no short helper for __commonJS");
});

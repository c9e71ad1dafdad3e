/** What is shipped is bundled in another way than what most tests run: it says the same all the same. */
import { fileURLToPath } from "node:url";
import { expect, test } from "vitest";
import { cotter, programIn } from "./program.ts";

const root = fileURLToPath(new URL("../../", import.meta.url));

test.each([
  ["check"],
  ["order"],
  ["timeline", "--html"],
  ["outstanding", "--json"],
  ["joints", "--csv"],
  ["costs", "--markdown"],
  ["parts", "--on", "2026-05-02"],
  ["lives"],
  ["settings"],
  ["calc", "tightening_torque(M8, 10 kN, 0.2)"],
])("cotter %j", async (...words) => {
  const folder = `${root}samples/roadster`;
  expect(programIn(`${root}dist/cotter.cjs`, words, folder)).toEqual(await cotter(words, folder));
});

/** What others wrote and is shipped: under which terms, and told in full. */
import { expect, test } from "vitest";
import { ALLOWED, billOfMaterials, bundled } from "./sbom.mjs";

test("every bundled package has terms of the allow-list", () => {
  expect(bundled().length).toBeGreaterThan(5);
  expect(bundled().filter(({ licence }) => !ALLOWED.includes(licence))).toEqual([]);
});

test("the bill of materials names each with its version and digest", () => {
  const { components } = billOfMaterials();
  expect(components.map(({ purl }) => purl)).toContain("pkg:npm/decimal.js@10.6.0");
  expect(components).toHaveLength(bundled().length);
  expect(components.filter(({ hashes }) => hashes === undefined)).toEqual([]);
});

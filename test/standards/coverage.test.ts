import { readdirSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { referenceRows } from "./reference-rows.ts";
import { unchecked } from "./row-checks.ts";

const tables = readdirSync(new URL("./data/", import.meta.url))
  .filter((name) => name.endsWith(".csv"))
  .map((name) => name.replace(/\.csv$/, ""));

const rows = tables.flatMap(referenceRows);

describe("the tables of published values", () => {
  test("have no id twice", () => {
    const ids = rows.map(({ id }) => id);
    expect(ids.filter((id, place) => ids.indexOf(id) !== place)).toEqual([]);
  });

  test("name a source and the evidence for each row", () => {
    expect(
      rows.filter(({ source, evidence }) => source === "" || !/^(read|recomputed|memory)$/.test(evidence)),
    ).toEqual([]);
  });

  test("list unchecked rows once, in order, each with a reason, and no others", () => {
    const ids = Object.keys(unchecked);
    expect(ids).toEqual([...ids].sort());
    expect(Object.values(unchecked).filter((reason) => reason.trim() === "")).toEqual([]);
    const known = new Set(rows.map(({ id }) => id));
    expect(ids.filter((id) => !known.has(id))).toEqual([]);
  });
});

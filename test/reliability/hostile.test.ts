/** A stranger's log in three of its forms; the long run calls every command in every form. */
import { expect, test } from "vitest";
import { callAll } from "./hostile.mjs";

test("nothing of a hostile log steers what shows it", () => {
  const { called, faults } = callAll(["check", "order"], ["text", "csv", "html"]);
  expect(faults).toEqual([]);
  expect(called).toEqual(["check as text", "order as text", "order as csv", "order as html"]);
});

test("nor does what is said beside a book of photos that are not there", () => {
  expect(callAll(["book"], ["text"])).toEqual({ called: ["book as text"], faults: [] });
});

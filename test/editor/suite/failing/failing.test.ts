import assert from "node:assert/strict";
import { suite, test } from "mocha";

suite("A run whose test fails", () => {
  test("fails on purpose: the launcher has to say so", () => {
    assert.equal("what is found", "what is expected");
  });
});

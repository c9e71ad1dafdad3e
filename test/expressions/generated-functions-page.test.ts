import { expect, test } from "vitest";
import { functionsPage } from "../../server/expressions/functions-page.ts";

test("the reference page of the functions is current", async () => {
  await expect(functionsPage()).toMatchFileSnapshot("../../docs/functions.md");
});

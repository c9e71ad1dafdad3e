import { describe, expect, test } from "vitest";
import { precedence } from "../../server/plan/precedence.ts";

/** `c < a b` waits for a and b. */
function read(...lines: readonly string[]) {
  return lines.map((line) => {
    const [id = "", after = ""] = line.split(" < ");
    return { id, after: after === "" ? [] : after.split(" ") };
  });
}

function orderOf(...lines: readonly string[]): string {
  return precedence(read(...lines))
    .order.map(({ id }) => id)
    .join(" ");
}

function circlesOf(...lines: readonly string[]) {
  return precedence(read(...lines)).circles.map(
    ({ ids, leftOut }) => `${ids.join(" ")}, without ${leftOut.id} < ${leftOut.after}`,
  );
}

describe("the order of work", () => {
  test("is that of definition where nothing waits", () => {
    expect(orderOf("paint", "strip", "loom")).toBe("paint strip loom");
  });

  test("puts each behind what it waits for", () => {
    expect(orderOf("build < paint", "paint < strip", "strip")).toBe("strip paint build");
  });

  test("takes what is not among them as met", () => {
    expect(orderOf("build < done_long_ago", "strip")).toBe("build strip");
  });

  test("counts a predecessor that is named twice once", () => {
    const links = precedence(read("strip", "paint < strip strip"));
    expect(links.before("paint").map(({ id }) => id)).toEqual(["strip"]);
    expect(links.behind("strip").map(({ id }) => id)).toEqual(["paint"]);
  });

  test("of a chain of twenty thousand is found", () => {
    const chain = Array.from({ length: 20_000 }, (_, place) => ({
      id: `${place}`,
      after: place === 0 ? [] : [`${place - 1}`],
    }));
    const order = precedence(chain.toReversed()).order.map(({ id }) => Number(id));
    expect(order.every((id, place) => id === place)).toBe(true);
    expect(order).toHaveLength(20_000);
  });
});

describe("a circle", () => {
  test("of one loses its link to itself", () => {
    expect(circlesOf("strip < strip")).toEqual(["strip, without strip < strip"]);
  });

  test("is broken where the first defined waits for the last", () => {
    expect(circlesOf("a < c", "b < a", "c < b")).toEqual(["a b c, without a < c"]);
    expect(orderOf("a < c", "b < a", "c < b")).toBe("a b c");
  });

  test("is broken where it is entered from work that waits for nothing", () => {
    expect(circlesOf("a < c", "b < a strip", "c < b", "strip")).toEqual(["b c a, without b < a"]);
  });

  test("leaves every other link in force", () => {
    const links = precedence(read("a < b", "b < a", "paint < b", "trim < paint"));
    expect(links.circles).toHaveLength(1);
    expect(links.order.map(({ id }) => id)).toEqual(["a", "b", "paint", "trim"]);
    expect(links.before("paint").map(({ id }) => id)).toEqual(["b"]);
  });

  test("is reported for each of several", () => {
    expect(circlesOf("a < b", "b < a", "c < d", "d < c")).toEqual([
      "a b, without a < b",
      "c d, without c < d",
    ]);
  });
});

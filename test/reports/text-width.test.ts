import { describe, expect, test } from "vitest";
import { fitted, plainText, widthOf } from "../../server/reports/text-width.ts";

describe("a text in a drawing", () => {
  test("is whole where it has room", () => {
    expect(fitted("Front corners", widthOf("Front corners", 13), 13)).toBe("Front corners");
  });

  test("is cut short where it has not, and says so", () => {
    const short = fitted("Front corners back together", 100, 13);
    expect(short).toMatch(/^Front c.*…$/);
    expect(widthOf(short, 13)).toBeLessThanOrEqual(100);
  });

  test("is cut between letters, not within one", () => {
    expect(fitted("🛠🛠🛠🛠", 40, 13)).toBe("🛠🛠…");
  });

  test("is escaped after it is cut, so that no sign is cut in two", () => {
    expect(fitted("<&><&><&>", 40, 13)).toBe("&lt;&amp;&gt;…");
  });

  test("loses characters that no document may hold", () => {
    expect(plainText("a\u0000b\uD800c\uFFFEd")).toBe("a b c d");
  });
});

import { readNumber } from "../../server/quantities/number.ts";
import { quantity, writtenQuantity } from "../../server/quantities/quantity.ts";
import { NO_UNIT } from "../../server/quantities/unit.ts";
import type { GivenDimension } from "../../server/trade/identification/given.ts";
import { givenDimension } from "../../server/trade/identification/given.ts";

/** Dimensions as one types them, for a test: `bore=20mm pitch=1.06mm±0.02mm tpi=24`. */
export function given(text: string): readonly GivenDimension[] {
  return text.split(" ").map((word) => {
    const [name = "", value = ""] = word.split("=");
    const [written = "", within] = value.split("±");
    const dimension = givenDimension(name, read(written), within === undefined ? undefined : read(within));
    if ("fault" in dimension) throw new Error(`${word}: ${dimension.message}`);
    return dimension;
  });
}

function read(text: string) {
  const [, number = "", unit = ""] = /^([\d./]+)(.*)$/.exec(text) ?? [];
  const value = readNumber(number);
  if ("fault" in value) throw new Error(`no number: ${text}`);
  if (unit === "") return writtenQuantity(value, NO_UNIT);
  const found = quantity(value, unit);
  if ("fault" in found) throw new Error(`no quantity: ${text}`);
  return found;
}

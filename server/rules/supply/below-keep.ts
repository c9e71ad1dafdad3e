import type { Build } from "../../build/build.ts";
import { thingsThatSay } from "../../build/sayers.ts";
import { placeAt } from "../../build/source.ts";
import type { Notice } from "../rule.ts";
import { checkingRule } from "../rule.ts";

export const belowKeep = checkingRule({
  code: "below-keep",
  group: "Lives and supply",
  severity: "information",
  summary: "There is less on the shelf than should be kept there",
  why: "It will be wanted on an evening when no shop is open.",
  remedy: "Order it: it is on the list of cotter order. Write counted: if the shelf says otherwise.",
  bad: `part split_pin "Split pin, 3.2 mm"
  price: 0.12 GBP
  stock: 2
  keep: 10
`,
  good: `part split_pin "Split pin, 3.2 mm"
  price: 0.12 GBP
  stock: 12
  keep: 10
`,
  check: lowShelves,
});

function* lowShelves({ standing }: Build): Generator<Notice> {
  for (const node of thingsThatSay(standing, "keep")) {
    const keep = standing.definitions.one(node, "keep");
    const supply = standing.supply.get(node);
    if (keep === undefined || supply === undefined || supply.inHand >= keep.record.count) continue;
    const { inHand, orders } = supply;
    const onOrder = orders.reduce((sum, line) => sum + line.count - line.received, 0);
    const coming = onOrder === 0 ? "" : `, ${onOrder} on order`;
    yield {
      place: placeAt(keep.site, keep.record.at),
      message: `${inHand} of ${node.path} in hand${coming}: expected at least ${keep.record.count}`,
    };
  }
}

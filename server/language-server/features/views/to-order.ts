/** What is to be ordered, by supplier. */
import type { OrderLine } from "../../../plan/order.ts";
import { orderOf } from "../../../plan/order.ts";
import { lineTotal } from "../../../plan/order-arithmetic.ts";
import { formatMoney } from "../../../quantities/money.ts";
import type { OrderEntry, SupplierEntry } from "../../protocol.ts";
import type { ChosenBuild } from "./chosen-build.ts";

export function toOrder(chosen: ChosenBuild): readonly SupplierEntry[] {
  const { build, plan } = chosen;
  return orderOf(build, plan).sum.suppliers.map((supplier) => {
    const definition =
      supplier.supplier === undefined ? undefined : build.standing.names.named("supplier", supplier.supplier);
    const { goods, carriage, unpriced, minimum } = supplier;
    return {
      ref: supplier.supplier ?? null,
      title: definition?.title ?? null,
      goods: goods.map(formatMoney),
      carriage: carriage === undefined ? null : formatMoney(carriage),
      unpriced,
      short:
        minimum?.kind === "short"
          ? { by: formatMoney(minimum.by), minimum: formatMoney(minimum.minimum) }
          : null,
      spot: definition === undefined ? null : chosen.spotOf(definition.header),
      lines: supplier.lines.map((line) => entryOf(chosen, line)),
    };
  });
}

function entryOf(chosen: ChosenBuild, line: OrderLine): OrderEntry {
  const { node } = line.need;
  const total = lineTotal(line);
  return {
    ref: node.path,
    title: node.title ?? null,
    number: chosen.build.standing.definitions.one(node, "number")?.record.text ?? null,
    quantity: line.purchase.quantity,
    total: total === undefined ? null : formatMoney(total),
    needBy: line.needBy ?? null,
    orderBy: line.orderBy ?? null,
    late: line.late,
    why: line.why.map(({ text, place }) => ({ text, spot: chosen.spotOf(place) })),
    spot: node.header === undefined ? null : chosen.spotOf(node.header),
  };
}

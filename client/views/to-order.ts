/** *To order*: what has to be bought, by supplier; below each line the reasons for it. */
import { l10n, ThemeColor, ThemeIcon } from "vscode";
import type { OrderEntry, SupplierEntry } from "../../server/language-server/protocol.ts";
import type { ShownBuild } from "../shown-build.ts";
import type { InBrief } from "./days-in-brief.ts";
import { daysInBrief } from "./days-in-brief.ts";
import { LiveTree } from "./live-tree.ts";
import type { Row } from "./row.ts";

export function toOrder(shown: ShownBuild): LiveTree {
  const inBrief = daysInBrief(shown);
  return new LiveTree(shown, {
    id: "cotter.toOrder",
    roots: async () =>
      ((await shown.ask("cotter/toOrder", {})) ?? []).map((supplier) => rowOfSupplier(supplier, inBrief)),
  });
}

function rowOfSupplier(supplier: SupplierEntry, inBrief: InBrief): Row {
  const { ref, title, goods, spot, lines } = supplier;
  const name = title ?? ref ?? l10n.t("No supplier named");
  // Two suppliers may have one title, but not one name in the log.
  const id = ref === null ? "no supplier" : `supplier ${ref}`;
  const inFull = sums(supplier).join(", ");
  return {
    id,
    label: name,
    description: goods.join(" + "),
    icon: new ThemeIcon("organization"),
    tooltip: [name, inFull].filter((line) => line !== "").join("\n"),
    spoken: [`${l10n.t("supplier")} ${name}`, inFull].filter((words) => words !== "").join(", "),
    spot,
    open: true,
    below: async () => lines.map((line) => rowOfLine(id, line, inBrief)),
  };
}

function sums({ goods, carriage, unpriced, short }: SupplierEntry): readonly string[] {
  return [
    ...goods.map((sum) => l10n.t("goods {0}", sum)),
    ...(carriage === null ? [] : [l10n.t("carriage {0}", carriage)]),
    ...(unpriced === 0 ? [] : [l10n.t("{0} without a price", unpriced)]),
    ...(short === null ? [] : [l10n.t("{0} short of the smallest order of {1}", short.by, short.minimum)]),
  ];
}

function rowOfLine(supplier: string, line: OrderEntry, inBrief: InBrief): Row {
  const { ref, title, number, quantity, total, needBy, late, why, spot } = line;
  const name = `${quantity} × ${title ?? ref}`;
  const id = `${supplier} ${ref}`;
  const inFull = [orderBy(line, (day) => day), total ?? ""].filter((words) => words !== "").join(", ");
  const details = [
    number === null ? ref : `${ref}, ${number}`,
    inFull,
    needBy === null ? "" : l10n.t("needed by {0}", needBy),
    ...why.map(({ text }) => text),
  ];
  return {
    id,
    label: name,
    description: orderBy(line, inBrief),
    icon: late
      ? new ThemeIcon("warning", new ThemeColor("list.warningForeground"))
      : new ThemeIcon("package"),
    tooltip: [name, ...details.filter((detail) => detail !== "")].join("\n"),
    spoken: [name, inFull].filter((words) => words !== "").join(", "),
    spot,
    ...(why.length === 0 ? {} : { below: async () => rowsOfReasons(id, why) }),
  };
}

function orderBy({ orderBy: date, late }: OrderEntry, inBrief: InBrief): string {
  if (date === null) return "";
  return late ? l10n.t("late: by {0}", inBrief(date)) : l10n.t("by {0}", inBrief(date));
}

function rowsOfReasons(line: string, why: OrderEntry["why"]): readonly Row[] {
  return why.map(({ text, spot }, index) => ({
    id: `${line} ${index}`,
    label: text,
    description: "",
    icon: new ThemeIcon("arrow-small-right"),
    tooltip: text,
    spoken: text,
    spot,
  }));
}

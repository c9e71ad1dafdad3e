/** *To order*: what has to be bought, by supplier; below each line the reasons for it. */
import { l10n, ThemeColor, ThemeIcon } from "vscode";
import type { OrderEntry, SupplierEntry } from "../../server/language-server/protocol.ts";
import type { ShownBuild } from "../shown-build.ts";
import { LiveTree } from "./live-tree.ts";
import type { Row } from "./row.ts";

export function toOrder(shown: ShownBuild): LiveTree {
  return new LiveTree(shown, {
    id: "cotter.toOrder",
    roots: async () => ((await shown.ask("cotter/toOrder", {})) ?? []).map(rowOfSupplier),
  });
}

function rowOfSupplier({ title, sums, spot, lines }: SupplierEntry): Row {
  const words = sums.join("; ");
  return {
    id: title,
    label: title,
    description: words,
    icon: new ThemeIcon("package"),
    tooltip: words === "" ? title : `${title}\n${words}`,
    spoken: `${l10n.t("supplier")} ${title}, ${words}`,
    spot,
    open: true,
    below: async () => lines.map((line) => rowOfLine(title, line)),
  };
}

function rowOfLine(supplier: string, line: OrderEntry): Row {
  const { ref, title, number, quantity, total, needBy, late, why, spot } = line;
  const label = `${quantity} × ${title ?? ref}`;
  const words = [orderBy(line), total ?? ""].filter((word) => word !== "").join(", ");
  const details = [
    number === null ? ref : `${ref}, ${number}`,
    words,
    needBy === null ? "" : l10n.t("needed by {0}", needBy),
    ...why.map(({ text }) => text),
  ];
  return {
    id: `${supplier} ${ref}`,
    label,
    description: words,
    icon: late
      ? new ThemeIcon("warning", new ThemeColor("list.warningForeground"))
      : new ThemeIcon("circle-large-outline"),
    tooltip: [label, ...details.filter((detail) => detail !== "")].join("\n"),
    spoken: `${label}, ${words}`,
    spot,
    ...(why.length === 0 ? {} : { below: async () => rowsOfReasons(`${supplier} ${ref}`, why) }),
  };
}

function orderBy({ orderBy: date, late }: OrderEntry): string {
  if (date === null) return "";
  return late ? l10n.t("late: order by {0}", date) : l10n.t("order by {0}", date);
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

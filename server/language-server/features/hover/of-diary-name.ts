/** What is told of names that the diary itself gives: computed values, snags, orders. */
import type { Build } from "../../../build/build.ts";
import type { Calculation } from "../../../build/calculation.ts";
import { lineOf, textAt } from "../../../build/source.ts";
import type { TreeNode } from "../../../build/tree/node.ts";
import { formatValue } from "../../../expressions/value.ts";
import { block, code, escaped, list, paragraphs } from "../../markdown.ts";
import { measurementLines } from "../../words/measurements.ts";
import { inOtherUnits } from "../../words/other-units.ts";
import { heading } from "./of-node.ts";

/** `REF.NAME`: its readings against its limits, or what is computed of it. */
export function describeCharacteristic(build: Build, node: TreeNode, name: string): string {
  const readings = measurementLines(build, node, name);
  const { written } = build.standing.gathered;
  const records = written
    .records(node)
    .flatMap(({ record, site }) =>
      "name" in record && record.name === name ? [textAt({ site, ...record.at })] : [],
    );
  const computed = build.calculations.filter((each) => each.node === node && each.name === name);
  return paragraphs(
    `**${escaped(name)}** of ${heading(build, node)}`,
    records.length === 0 ? undefined : block(records.join("\n"), "cotter"),
    readings.length === 0 ? undefined : block(readings.join("\n"), "text"),
    ...computed.map(describeCalculation),
  );
}

/** A name that `calc:` has given in the days, the newest first. */
export function describeCalculated(build: Build, name: string): string {
  const found = build.calculations.filter((each) => each.node === undefined && each.name === name);
  return paragraphs(...found.reverse().slice(0, 3).map(describeCalculation));
}

function describeCalculation({ name, place, outcome }: Calculation): string {
  const from = `${place.site.file.path}:${lineOf(place)}`;
  if (outcome.is === "value") {
    const { value, notes } = outcome;
    const others = value.kind === "quantity" ? inOtherUnits(value.quantity) : [];
    return paragraphs(
      `${code(`${name} = ${formatValue(value)}`)}, ${escaped(from)}`,
      others.length === 0 ? undefined : escaped(others.join(", ")),
      list(notes.map(escaped)),
    );
  }
  const why =
    outcome.is === "cycle" ? `it builds on itself: ${outcome.names.join(", ")}` : outcome.fault.message;
  return `${code(name)} has no value: ${escaped(why)}, ${escaped(from)}`;
}

export function describeSnag(build: Build, name: string): string {
  const snag = build.standing.snags.get(name);
  if (snag === undefined) return "";
  const { fact, cleared, conceded } = snag;
  const note = fact.fact.note === undefined ? "" : ` “${fact.fact.note}”`;
  const lines = [
    `raised on ${fact.date} on ${fact.fact.on.text}${note}`,
    ...(conceded === undefined
      ? []
      : [`conceded until ${conceded.fact.until.text} on ${conceded.date}${by(conceded.fact.by)}`]),
    cleared === undefined ? "not cleared" : `cleared on ${cleared.date}`,
  ];
  return paragraphs(`**snag** ${code(name)}`, list(lines.map(escaped)));
}

export function describeOrder(build: Build, name: string): string {
  const lines = [...build.standing.supply.values()].flatMap(({ node, orders }) =>
    orders
      .filter(({ fact }) => fact.fact.order === name)
      .map(({ count, received, fact }) => {
        const due = fact.fact.due === undefined ? "" : `, due ${fact.fact.due}`;
        return `${count} x ${node.path}, ${received} received${due}`;
      }),
  );
  return lines.length === 0 ? "" : paragraphs(`**order** ${code(name)}`, list(lines.map(escaped)));
}

function by(who: string | undefined): string {
  return who === undefined ? "" : ` by ${who}`;
}

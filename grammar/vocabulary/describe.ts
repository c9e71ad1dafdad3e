/** Shapes in words: for messages, signature help and the reference page. */
import { withArticle } from "../article.ts";
import type { ArgumentShape, Clause, DimensionHint, Shape } from "./shape.ts";

const QUANTITIES: Readonly<Record<DimensionHint, string>> = {
  any: "a value with its unit, such as 9.12 mm",
  length: "a length, such as 14 mm",
  area: "an area, such as 2.5 mm2",
  volume: "a volume, such as 0.6 l",
  time: "a time, such as 6 h",
  torque: "a torque, such as 24 N.m",
  pressure: "a pressure, such as 70 bar",
  voltage: "a voltage, such as 12 V",
  "current or power": "a current or a power, such as 11 A",
  ratio: "a percentage, such as 10 %",
  distance: "a distance, such as 4 km",
  "count of runs": "a number of runs, such as 5 run",
};

const VALUES: Readonly<
  Record<
    Exclude<
      Shape["value"],
      | "quantity"
      | "quantities"
      | "sequence"
      | "word"
      | "words"
      | "reference"
      | "references"
      | "countedReferences"
      | "either"
    >,
    string
  >
> = {
  string: 'a text in quotation marks, "…"',
  date: "a date, such as 2026-05-02",
  dateRange: "two dates, such as 2026-08-01..2026-08-14",
  number: "a number",
  money: "an amount with its currency, such as 62.00 GBP",
  moneyRate: "money by the hour, such as 40 GBP/h",
  exchange: "a rate, such as 1 EUR = 0.86 GBP",
  tolerance: "an uncertainty, such as ± 0.004 mm",
  limits: "limits, such as min 8.4 mm, 54.00..54.05 mm or 54 mm ± 0.05",
  bolt: "a bolt, such as 4 x M8x1.25x30 class 8.8",
  nut: "a nut or tapped hole, such as self_locking M8x1.25 or tapped 18 mm in aluminium",
  countedQuantity: "a number and a thickness, such as 2 x 1.6 mm",
  torque: "a torque, such as 24 N.m ± 10 %, from class or by hand",
  friction: "a friction, such as oiled, nut_factor 0.18 or thread 0.14 head 0.12",
  life: "a life, such as 5 year from made or 20 h running",
  recheck: "an interval, such as after 1 h running, then every 10 h running",
  week: "days with hours, such as tue 2 h, sat 6 h",
  takes: "a time, such as 6 h or 4..6..10 h",
  ranges: "a range, such as 0..25 mm",
  pack: "a number, such as 10 or 50 at 2.00 GBP",
  wireGauge: "a wire gauge, such as AWG 14",
  thread: "a thread, such as M10x1.25",
  stops: "jobs, or ran and what must not run",
  definition: "a record's word and its value, such as torque 26 N.m",
  expression: "an expression, such as 54 mm - 53.9 mm",
};

/** What a place expects, in words that fit behind "expected". */
export function describeShape(shape: Shape): string {
  switch (shape.value) {
    case "quantity":
      return QUANTITIES[shape.of];
    case "quantities":
      return `${QUANTITIES[shape.of]} (several by comma)`;
    case "sequence":
      return "a time, and perhaps a distance and a number of runs, such as 0.2 h 4 km 5 run";
    case "word":
    case "words":
      if ("choices" in shape.of)
        return shape.of.choices.length === 1
          ? `${shape.of.choices[0]}`
          : `one of ${shape.of.choices.join(" ")}`;
      return {
        characteristic: "the name of what is measured or set",
        "new name": "a name",
        path: "a path, such as front.left.hub",
        currency: "a currency code, such as GBP",
      }[shape.of.names];
    case "reference":
      return shape.member
        ? "something and its characteristic, such as front.left.hub.bore"
        : `the name of ${kinds(shape.to)}`;
    case "references":
      return `the names of ${kinds(shape.to)}`;
    case "countedReferences":
      return shape.count === "required"
        ? "a number and what is counted, such as 4 x disc_nut"
        : "what is meant, with a number where it matters, such as 2 x disc_nut";
    case "either":
      return shape.options.map(describeShape).join(", or ");
    default:
      return VALUES[shape.value];
  }
}

function kinds(to: readonly string[]): string {
  const names = to.length > 4 ? ["part", "joint", "system", "circuit"] : to;
  return names.map(withArticle).join(" or ");
}

/** The grammar of a statement in one line: `measured: REF NAME VALUE[, VALUE …] [± Q] [with GAUGE]`. */
export function describeArguments({ elements, clauses, note }: ArgumentShape): string {
  const placed = elements.map(({ shape, role, optional }) =>
    optional ? `[${placeholder(shape, role)}]` : placeholder(shape, role),
  );
  const behind = clausesByChoice(clauses).map((group) => {
    const text = group.map(clauseText).join("|");
    return group[0].required ? text : `[${text}]`;
  });
  return [...placed, ...behind, ...(note ? [note === "required" ? '"note"' : '["note"]'] : [])].join(" ");
}

/** Clauses in their order, those that exclude each other together. */
export function clausesByChoice(clauses: readonly Clause[]): [Clause, ...Clause[]][] {
  const groups: [Clause, ...Clause[]][] = [];
  for (const clause of clauses) {
    const group = groups.find(
      ([first]) => first.insteadOf !== undefined && first.insteadOf === clause.insteadOf,
    );
    if (group === undefined) groups.push([clause]);
    else group.push(clause);
  }
  return groups;
}

export function describeClause(clause: Clause): string {
  return clause.required ? clauseText(clause) : `[${clauseText(clause)}]`;
}

function clauseText({ words, role, shape }: Clause): string {
  return shape === undefined ? words.join(" ") : `${words.join(" ")} ${placeholder(shape, role)}`;
}

/** The place of a value in a signature: capitals for what the author fills in, words for what is fixed. */
export function placeholder(shape: Shape, role: string): string {
  switch (shape.value) {
    case "word":
      if ("names" in shape.of) return { path: "PATH", currency: "CODE" }[shape.of.names as string] ?? "NAME";
      return shape.of.choices.length > 3 ? role.toUpperCase() : shape.of.choices.join("|");
    case "definition":
      return "WORD VALUE";
    case "expression":
      return "= EXPRESSION";
    case "string":
      return '"…"';
    case "date":
    case "money":
      return shape.value.toUpperCase();
    case "reference":
      return shape.member ? "REF.NAME" : nameOfKinds(shape.to);
    case "references":
      return `${nameOfKinds(shape.to)}[, …]`;
    case "countedReferences":
      return `${shape.count === "required" ? "N x" : "[N x]"} REF${shape.priced ? " [at MONEY]" : ""}[, …]`;
    case "sequence":
      return "DURATION [DISTANCE] [COUNT]";
    case "words":
    case "quantities":
      return `${role.toUpperCase()}[, …]`;
    case "either":
      return [...new Set(shape.options.map((option) => placeholder(option, role)))].join("|");
    default:
      return role === "value" ? shape.value.toUpperCase() : role.toUpperCase();
  }
}

function nameOfKinds(to: readonly string[]): string {
  return to.length === 1 ? `${to[0]?.toUpperCase()}` : "REF";
}

/** Units behind numbers, dates, currencies, names of characteristics, and what quotation marks can hold. */
import { CompletionItemKind } from "vscode-languageserver";
import type { DimensionHint, Shape } from "../../../../grammar/vocabulary/shape.ts";
import type { Build } from "../../../build/build.ts";
import type { TreeNode } from "../../../build/tree/node.ts";
import { addDays, weekday } from "../../../quantities/dates.ts";
import type { DimensionName } from "../../../quantities/dimension.ts";
import type { Limits } from "../../../quantities/limits.ts";
import type { Quantity } from "../../../quantities/quantity.ts";
import { allUnits, unitsOf } from "../../../quantities/unit.ts";
import { nodeOfBlock, nodesNamed } from "../../names/meaning.ts";
import { siteAt } from "../../names/occurrences.ts";
import { referencesIn } from "../../names/written-names.ts";
import type { Due } from "../../text/due.ts";
import type { BlockPlace } from "../../view.ts";
import type { Asked, Proposal } from "./item.ts";
import { characteristicsOf } from "./of-references.ts";

/** The things that a line is about: those that it names first, else the block's own. */
export function subjectsOf({ view, place }: Asked, at: BlockPlace): readonly TreeNode[] {
  const [reference] = referencesIn(place.values.get("what"));
  if (reference !== undefined) return nodesNamed(view.recentBuild, reference);
  const node = nodeOfBlock(view.recentBuild, siteAt(view, at));
  return node === undefined ? [] : [node];
}

export function characteristicProposals(asked: Asked, subjects: readonly TreeNode[]): readonly Proposal[] {
  const word = asked.place.statement.word.text;
  const wanted = WANTED[word];
  const { standing } = asked.view.recentBuild;
  const own = subjects.flatMap((node) =>
    word === "tested"
      ? standing.definitions.all(node, "test").map(({ record }) => ({
          node,
          name: record.name,
          detail: record.how ?? "test",
          word: "test",
        }))
      : characteristicsOf(asked.view.recentBuild, node).map((known) => ({ node, ...known })),
  );
  return own.map(({ node, name, detail, word: from }) => ({
    label: name,
    kind: CompletionItemKind.Field,
    rank: wanted === undefined || wanted === from ? 0 : 1,
    detail,
    documented: { is: "characteristic", path: node.path, name },
  }));
}

/** What a fact is mostly told of: limits are measured, settings are set. */
const WANTED: Readonly<Record<string, string>> = { measured: "limit", set: "setting", tested: "test" };

const DIMENSIONS: Readonly<Record<DimensionHint, readonly DimensionName[]>> = {
  any: [],
  length: ["length"],
  area: ["area"],
  volume: ["volume"],
  time: ["time", "calendar"],
  torque: ["torque"],
  pressure: ["pressure"],
  voltage: ["voltage"],
  "current or power": ["current", "power"],
  ratio: ["ratio"],
  distance: ["length"],
  "count of runs": ["run"],
};

const DIMENSIONS_OF_SHAPES: Readonly<Partial<Record<Shape["value"], readonly DimensionName[]>>> = {
  torque: ["torque", "angle", "ratio"],
  bolt: ["length"],
  nut: ["length"],
  countedQuantity: ["length"],
  life: ["calendar", "time", "length", "run"],
  recheck: ["time", "length", "run"],
  week: ["time"],
  takes: ["time"],
};

/** Units by the words that need no more to tell what they measure. */
const DIMENSIONS_OF_WORDS: Readonly<Record<string, readonly DimensionName[]>> = {
  fuse: ["current"],
  drop: ["ratio", "voltage"],
  calibrated: ["calendar", "time"],
  ran: ["time", "length", "run"],
};

/** Units for the number before the cursor, those first that the build uses for the same thing. */
export function unitProposals(
  asked: Asked,
  due: Due | undefined,
  subjects: readonly TreeNode[],
): readonly Proposal[] {
  const { place, view } = asked;
  const shape = due?.is === "value" ? due.shape : undefined;
  if (shape?.value === "money" || shape?.value === "moneyRate" || shape?.value === "exchange")
    return currencies(view.recentBuild);
  const name = place.values.get("name");
  const used = name?.kind === "word" ? unitsUsedFor(view.recentBuild, subjects, name.text) : [];
  const dimensions = dimensionsOf(place.entry.word, shape);
  const fitting = dimensions.flatMap((dimension) => unitsOf(dimension));
  const others = used.length === 0 && fitting.length === 0 ? allUnits() : [];
  const units = [...new Set([...used.map(({ symbol }) => symbol), ...siblings(used), ...fitting, ...others])];
  return units.map((label, index) => ({
    label,
    kind: CompletionItemKind.Unit,
    rank: index < Math.max(used.length, 1) ? 0 : 1,
  }));
}

function dimensionsOf(word: string, shape: Shape | undefined): readonly DimensionName[] {
  const ofWord = DIMENSIONS_OF_WORDS[word];
  if (ofWord !== undefined) return ofWord;
  if (shape === undefined) return [];
  if (shape.value === "quantity" || shape.value === "quantities" || shape.value === "sequence")
    return DIMENSIONS[shape.of];
  return DIMENSIONS_OF_SHAPES[shape.value] ?? [];
}

interface UsedUnit {
  readonly symbol: string;
  readonly dimension: DimensionName | undefined;
}

/** The units in which the limits, settings and readings of a characteristic are written. */
function unitsUsedFor({ standing }: Build, subjects: readonly TreeNode[], name: string): readonly UsedUnit[] {
  const { tree } = standing.gathered;
  const of = (node: TreeNode): readonly (Quantity | undefined)[] => [
    ...(["limit", "setting"] as const).flatMap((word) =>
      standing.definitions
        .all(node, word)
        .flatMap(({ record }) => (record.name === name ? [boundOf(record.limits)] : [])),
    ),
    ...standing.definitions
      .all(node, "size")
      .map(({ record }) => (record.name === name && "unit" in record.size ? record.size : undefined)),
    ...(standing.parts.get(node)?.item.readings ?? []).flatMap((reading) =>
      reading.name === name ? [reading.values[0]] : [],
    ),
  ];
  const withUnit = (nodes: Iterable<TreeNode>) =>
    [...nodes]
      .flatMap(of)
      .filter((quantity) => quantity !== undefined)
      .filter(({ unit }) => unit.symbol !== "");
  const found = withUnit(subjects);
  const elsewhere = found.length > 0 ? [] : withUnit(tree.nodes());
  const units = [...found, ...elsewhere].map(
    ({ unit }) => [unit.symbol, { symbol: unit.symbol, dimension: unit.dimension.name }] as const,
  );
  return [...new Map(units).values()];
}

function boundOf({ lower, upper, nominal }: Limits): Quantity | undefined {
  return nominal ?? lower ?? upper;
}

function siblings(used: readonly UsedUnit[]): readonly string[] {
  return used.flatMap(({ dimension }) => (dimension === undefined ? [] : unitsOf(dimension)));
}

/** The build's own currency first, then those of its rates. */
export function currencies({ standing }: Build): readonly Proposal[] {
  const { root } = standing.gathered.tree;
  const own = standing.definitions.one(root, "currency")?.record.currency;
  const rates = standing.definitions
    .all(root, "rate")
    .flatMap(({ record: { rate } }) => [rate.from, rate.to]);
  const known = [...(own === undefined ? [] : [own]), ...rates, "GBP", "EUR", "USD"];
  return [...new Set(known)].map((label, index) => ({
    label,
    kind: CompletionItemKind.Unit,
    rank: index === 0 ? 0 : 1,
  }));
}

/** Today, the days around it, and a week and a fortnight ahead. */
export function dateProposals({ today }: Build): readonly Proposal[] {
  return DAYS.map(([days, words]) => {
    const date = addDays(today, days);
    return {
      label: date,
      kind: CompletionItemKind.Value,
      rank: days === 0 ? 0 : 1,
      detail: `${words}, ${weekday(date)}`,
    };
  });
}

const DAYS: readonly (readonly [number, string])[] = [
  [0, "today"],
  [-1, "yesterday"],
  [1, "tomorrow"],
  [7, "in a week"],
  [14, "in two weeks"],
];

/** What has stood between quotation marks in the same place before: people, fluids, open orders, spots. */
export function textProposals({ view: { recentBuild: build }, place }: Asked): readonly Proposal[] {
  const [due] = place.due;
  const role = due?.is === "value" ? due.role : undefined;
  const word = place.statement.word.text;
  if (word === "received" && role === "order") return openOrders(build);
  if (role === "by") return known(build.facts.map(({ fact }) => fact.by));
  if (word === "filled" && role === "fluid") {
    const { tree } = build.standing.gathered;
    return known([...tree.nodes()].map((node) => build.standing.definitions.one(node, "fluid")?.record.text));
  }
  if (word === "measured" && role === "at")
    return known(build.facts.map(({ fact }) => (fact.word === "measured" ? fact.spot : undefined)));
  return [];
}

function known(texts: readonly (string | undefined)[]): readonly Proposal[] {
  const said = new Set(texts.filter((text) => text !== undefined).filter((text) => text !== ""));
  return [...said].map((label) => ({ label, kind: CompletionItemKind.Text, rank: 0 }));
}

function openOrders({ standing }: Build): readonly Proposal[] {
  const lines = [...standing.supply.values()].flatMap(({ orders }) => orders);
  const open = lines.filter(({ count, received }) => received < count);
  return known(open.map(({ fact }) => fact.fact.order)).map((proposal) => ({
    ...proposal,
    documented: { is: "order", name: proposal.label },
  }));
}

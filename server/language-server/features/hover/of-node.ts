/** What is told of a thing of the tree: how it stands, its readings against limits, its settings, lives and goods. */
import type { Build } from "../../../build/build.ts";
import { isCritical } from "../../../build/criticality.ts";
import type { Life } from "../../../build/lives.ts";
import { livesOf } from "../../../build/lives.ts";
import { settingsOf } from "../../../build/setting-check.ts";
import type { TreeNode } from "../../../build/tree/node.ts";
import { below } from "../../../build/tree/node.ts";
import type { PartNeed } from "../../../plan/needs.ts";
import { needsOf } from "../../../plan/needs.ts";
import { formatMoney } from "../../../quantities/money.ts";
import { formatQuantity } from "../../../quantities/quantity.ts";
import { GUARD_BAND_REMARK } from "../../../quantities/verdict.ts";
import { sayLimits } from "../../../reports/parts.ts";
import { block, code, escaped, list, paragraphs } from "../../markdown.ts";
import { measurementLines, sayVerdict } from "../../words/measurements.ts";
import { isAmiss, stateOf } from "../../words/node-state.ts";
import { describeIdentity } from "./of-identity.ts";
import { describeJoint } from "./of-joint.ts";

/** Longer lists are cut, and say so. */
const LONGEST_LIST = 8;

export function describeNode(build: Build, node: TreeNode): string {
  const readings = measurementLines(build, node);
  return paragraphs(
    heading(build, node),
    escaped(stateOf(build, node)),
    identity(build, node),
    node.kind === "joint" ? describeJoint(build.standing, node) : undefined,
    readings.length === 0 ? undefined : block(readings.join("\n"), "text"),
    settings(build, node),
    found(build, node),
    goods(build, node),
    describeIdentity(build, node),
    node.kind === "vehicle" || node.kind === "assembly" ? inside(build, node) : undefined,
    readings.some((line) => line.includes("±")) ? `*${escaped(GUARD_BAND_REMARK)}*` : undefined,
  );
}

export function heading(build: Build, node: TreeNode): string {
  const title = node.title === undefined ? "" : `**${escaped(node.title)}** `;
  const kind = isCritical(build.standing, node) ? `${node.kind}, safety critical` : node.kind;
  const copy = node.copyOf === undefined ? "" : `, like ${code(node.copyOf)}`;
  return `${title}${code(node.path)}  \n*${kind}*${copy}`;
}

function identity({ standing }: Build, node: TreeNode): string | undefined {
  const { definitions } = standing;
  const count = definitions.one(node, "count")?.record.count;
  const price = definitions.one(node, "price")?.record.money;
  const supplier = definitions.one(node, "supplier")?.record.reference.text;
  const words = [
    count === undefined ? undefined : `${count} of it`,
    definitions.one(node, "number")?.record.text,
    definitions.one(node, "material")?.record.choice.replaceAll("_", " "),
    price === undefined ? undefined : formatMoney(price),
    supplier === undefined ? undefined : `from ${supplier}`,
    ...definitions
      .all(node, "size")
      .map(
        ({ record: { name, size } }) => `${name} ${"unit" in size ? formatQuantity(size) : size.designation}`,
      ),
  ].filter((word) => word !== undefined);
  return words.length === 0 ? undefined : escaped(words.join(", "));
}

function settings({ standing }: Build, node: TreeNode): string | undefined {
  const lines = settingsOf(standing, node).map(({ wanted: { record }, asSet: [newest], verdict }) => {
    const asked = `${record.name}: ${sayLimits(record.limits)}`;
    if (newest === undefined) return `${asked}, not set`;
    const figures = newest.values.map((value) => formatQuantity(value)).join(", ");
    const setup = newest.setup === undefined ? "" : ` for ${newest.setup.name}`;
    const judged = verdict === undefined ? "" : `: ${sayVerdict(verdict)}`;
    return `${asked}, ${figures}${setup} on ${newest.fact.date}${judged}`;
  });
  return lines.length === 0 ? undefined : list(lines.map(escaped));
}

function found({ standing }: Build, node: TreeNode): string | undefined {
  const part = standing.parts.get(node);
  if (part === undefined) return undefined;
  const conditions = part.item.events.flatMap((event) =>
    event.is === "found"
      ? [`found ${event.condition.replaceAll("_", " ")}${note(event.fact.fact.note)}, ${event.fact.date}`]
      : [],
  );
  const tags = part.tags.map(({ fact, date }) => `tagged “${fact.tag}”, ${date}`);
  const lives = livesOf(standing, part).map(sayLife);
  const lines = [...conditions.slice(-LONGEST_LIST), ...tags, ...lives];
  return lines.length === 0 ? undefined : list(lines.map(escaped));
}

function sayLife(life: Life): string {
  switch (life.is) {
    case "dated":
      return `good until ${life.ends}`;
    case "running": {
      const before = life.known ? "" : ", and what it ran before the log";
      return `${formatQuantity(life.used)} of ${formatQuantity(life.amount)} running used${before}`;
    }
    case "unknown":
      return `a life of ${formatQuantity(life.duration)} from ${life.counted}; when that was is unknown`;
  }
}

const needsByBuild = new WeakMap<Build, ReadonlyMap<TreeNode, PartNeed>>();

function goods(build: Build, node: TreeNode): string | undefined {
  let needs = needsByBuild.get(build);
  if (needs === undefined) {
    needs = new Map(needsOf(build).map((need) => [need.node, need]));
    needsByBuild.set(build, needs);
  }
  const need = needs.get(node);
  const inHand = build.standing.supply.get(node)?.inHand ?? 0;
  if (need === undefined) return inHand === 0 ? undefined : `${inHand} in hand`;
  const words = [
    `${need.demand.needed} needed`,
    ...(need.keep > 0 ? [`${need.keep} to keep`] : []),
    `${inHand} in hand`,
    `${need.onOrder} on order`,
    `**${need.toOrder} to order**`,
  ];
  return words.join(", ");
}

/** What below an assembly is not as it will have to be, the first few. */
function inside(build: Build, node: TreeNode): string | undefined {
  const amiss = [...below(node)].filter((child) => isAmiss(build, child));
  const lines = amiss.map((child) => `${code(child.path)} ${escaped(stateOf(build, child))}`);
  const shown = lines.slice(0, LONGEST_LIST);
  if (shown.length === 0) return undefined;
  return list(lines.length > shown.length ? [...shown, `and ${lines.length - shown.length} more`] : shown);
}

function note(text: string | undefined): string {
  return text === undefined ? "" : ` “${text}”`;
}

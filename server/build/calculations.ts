/**
 * What every `calc:` gives at one moment. In a block of the tree it is `REF.NAME` there; in the vehicle's block and in a
 * day it is known build-wide; in any other block it is known in that block. In a day it is worked out on its line, so
 * that it knows what stands before that line; elsewhere when it is asked for.
 */
import { nearest } from "../../grammar/nearest.ts";
import type { Expression, ExpressionNode } from "../../grammar/syntax.ts";
import type { Lookup, NameFault } from "../expressions/evaluate.ts";
import { evaluate } from "../expressions/evaluate.ts";
import type { Value } from "../expressions/value.ts";
import { quantityValue } from "../expressions/value.ts";
import type { ExchangeRate } from "../quantities/money.ts";
import type { Calculation, Outcome } from "./calculation.ts";
import type { Characteristic } from "./characteristic.ts";
import { newestKnown, nominalOf } from "./characteristic.ts";
import type { NamedDefinition } from "./definitions.ts";
import { memberReference } from "./reference-uses.ts";
import { placeAt } from "./source.ts";
import type { Standing } from "./standing.ts";
import type { DatedFact } from "./states.ts";
import type { SourcedRecord, TreeNode, Turn } from "./tree/node.ts";

/** Where an expression stands: whose names it can use without a path. */
type Scope =
  | { readonly is: "thing"; readonly node: TreeNode; readonly turns: readonly Turn[] }
  | { readonly is: "definition"; readonly definition: NamedDefinition }
  | { readonly is: "day" }
  /** An expression that stands nowhere in the log: it is asked now. */
  | { readonly is: "nowhere" };

/** Longer chains of calculations that build on each other are not followed. */
const LONGEST_CHAIN = 200;

/** Works out calculations at one moment, each once. */
export class Calculator {
  private readonly standing: Standing;
  private readonly outcomes = new Map<string, Outcome>();
  private readonly underWay: { readonly key: string; readonly name: string }[] = [];
  private readonly cycles = new Map<string, readonly string[]>();

  constructor(standing: Standing) {
    this.standing = standing;
  }

  /** The values of names for an expression that is asked now. */
  get lookup(): Lookup {
    return (name) => {
      const found = this.named(name, { is: "nowhere" });
      return "kind" in found ? found : found.fault;
    };
  }

  /** The rates by which currencies meet. */
  get rates(): readonly ExchangeRate[] {
    const { definitions, gathered } = this.standing;
    return definitions.all(gathered.tree.root, "rate").map(({ record }) => record.rate);
  }

  /** A `calc:` of a day, on its line. */
  ofFact({ fact: { name, expression }, place }: DatedFact<"calc">): Calculation {
    const outcome = this.evaluate(expression.tree, { is: "day" });
    return { name, place, expression, node: undefined, outcome };
  }

  /** The calculations of a thing's block, the vehicle's included. */
  ofThing(node: TreeNode): readonly Calculation[] {
    return this.standing.definitions
      .all(node, "calc")
      .map((sourced) => calculationOf(sourced, node, this.outcomeInThing(node, sourced)));
  }

  /** The calculations of a job, hold point, supplier, gauge, setup or donor. */
  ofDefinition(definition: NamedDefinition): readonly Calculation[] {
    return definition.records
      .filter(isCalculation)
      .map((sourced) => calculationOf(sourced, undefined, this.outcomeInDefinition(definition, sourced)));
  }

  /** `REF.NAME`: the newest of measured and set, else what is calculated, else what it should be. */
  characteristic(node: TreeNode, name: string): Characteristic | undefined {
    return (
      newestKnown(this.standing, node, name) ??
      this.calculated(node, name) ??
      nominalOf(this.standing, node, name)
    );
  }

  private calculated(node: TreeNode, name: string): Characteristic | undefined {
    const sourced = this.calculationIn(node, name);
    const outcome = sourced && this.outcomeInThing(node, sourced);
    if (sourced === undefined || outcome?.is !== "value" || outcome.value.kind !== "quantity")
      return undefined;
    const place = placeAt(sourced.site, sourced.record.at);
    return {
      value: outcome.value.quantity,
      from: "calculated",
      uncertainty: undefined,
      setup: undefined,
      place,
      fact: undefined,
    };
  }

  private calculationIn(node: TreeNode, name: string): SourcedRecord<"calc"> | undefined {
    return this.standing.definitions.all(node, "calc").findLast(({ record }) => record.name === name);
  }

  private outcomeInThing(node: TreeNode, { record, turns }: SourcedRecord<"calc">): Outcome {
    const key = `${node.path} ${record.name}`;
    const name = node.kind === "vehicle" ? record.name : `${node.path}.${record.name}`;
    return this.once(key, name, record.expression, { is: "thing", node, turns });
  }

  private outcomeInDefinition(definition: NamedDefinition, { record }: SourcedRecord<"calc">): Outcome {
    const key = `${definition.kind} ${definition.name} ${record.name}`;
    return this.once(key, record.name, record.expression, { is: "definition", definition });
  }

  private once(key: string, name: string, { tree }: ExpressionNode, scope: Scope): Outcome {
    const known = this.outcomes.get(key);
    if (known !== undefined) return known;
    const from = this.underWay.findIndex((one) => one.key === key);
    if (from >= 0) {
      const around = this.underWay.slice(from);
      const names = [...around.map((one) => one.name), name];
      for (const one of around) this.cycles.set(one.key, names);
      return { is: "cycle", names };
    }
    this.underWay.push({ key, name });
    const outcome = this.evaluate(tree, scope);
    this.underWay.pop();
    const cycle = this.cycles.get(key);
    const settled: Outcome = cycle === undefined ? outcome : { is: "cycle", names: cycle };
    this.outcomes.set(key, settled);
    return settled;
  }

  private evaluate(tree: Expression, scope: Scope): Outcome {
    let why: Missing["is"] = "unknown";
    const lookup: Lookup = (name) => {
      const found = this.named(name, scope);
      if ("kind" in found) return found;
      why = found.is;
      return found.fault;
    };
    const evaluated = evaluate(tree, lookup, this.rates);
    if (!("fault" in evaluated)) return { is: "value", ...evaluated };
    const { fault } = evaluated;
    return { is: fault.code !== "unknown-name" || why === "unknown" ? "fault" : why, fault };
  }

  private named(name: string, scope: Scope): Value | Missing {
    if (name.includes(".")) return this.ofMember(name, scope);
    const own = this.ofBlock(name, scope);
    return own ?? this.buildWide(name) ?? this.unknown(name, scope);
  }

  private ofBlock(name: string, scope: Scope): Value | Missing | undefined {
    if (scope.is === "thing") return this.ofNode(scope.node, name, scope);
    if (scope.is !== "definition") return undefined;
    const { definition } = scope;
    const sourced = definition.records.filter(isCalculation).findLast(({ record }) => record.name === name);
    return sourced && inValue(this.outcomeInDefinition(definition, sourced), name);
  }

  /** The newest of the days so far, else the vehicle's own. */
  private buildWide(name: string): Value | Missing | undefined {
    const ofDay = this.standing.calculated.get(name);
    if (ofDay !== undefined) return inValue(ofDay.outcome, name);
    const { root } = this.standing.gathered.tree;
    const sourced = this.calculationIn(root, name);
    return sourced && inValue(this.outcomeInThing(root, sourced), name);
  }

  private unknown(name: string, scope: Scope): Missing {
    const { root } = this.standing.gathered.tree;
    const own = scope.is === "thing" ? this.namesOf(scope.node) : [];
    const near = nearest(name, new Set([...own, ...this.standing.calculated.keys(), ...this.namesOf(root)]));
    const before = scope.is === "day" ? " before this line" : "";
    return missing("unknown", `nothing is called ${name}${before}`, near);
  }

  private ofMember(text: string, scope: Scope): Value | Missing {
    const turns = scope.is === "thing" ? scope.turns : [];
    const { names, definitions } = this.standing;
    const { node, name, fault } = names.member(definitions, memberReference({ text }), turns);
    // A path that leads nowhere is complained about as a reference.
    if (node === undefined) return missing("without ground", `${fault.text} leads to nothing`);
    const known = this.ofNode(node, name, scope);
    if (known !== undefined) return known;
    const path = text.slice(0, text.length - name.length);
    const near = nearest(name, this.namesOf(node)).map((each) => path + each);
    return missing("unknown", `${node.path} has nothing called ${name}, measured, set or sized`, near);
  }

  private ofNode(node: TreeNode, name: string, scope: Scope): Value | Missing | undefined {
    const known = newestKnown(this.standing, node, name);
    if (known !== undefined) return asValue(known);
    const sourced = this.calculationIn(node, name);
    if (sourced !== undefined) {
      if (this.underWay.length >= LONGEST_CHAIN)
        return missing("unknown", `${name} builds on more than ${LONGEST_CHAIN} others, one after the other`);
      return inValue(this.outcomeInThing(node, sourced), name);
    }
    const nominal = nominalOf(this.standing, node, name);
    if (nominal !== undefined) return asValue(nominal);
    if (!this.namesOf(node).includes(name)) return undefined;
    const before = scope.is === "day" ? " before this line" : "";
    return missing("waiting", `${node.path}.${name} has not been measured${before}`);
  }

  /** The names that a thing has something to say about. */
  private namesOf(node: TreeNode): readonly string[] {
    const { definitions } = this.standing;
    const named = (["limit", "setting", "size", "fit", "pair", "calc"] as const).flatMap((word) =>
      definitions.all(node, word).map(({ record }) => record.name),
    );
    return [...new Set(named)];
  }
}

/** Why a name has no value: there is none such, it has none yet, or the line that should give it has none. */
interface Missing {
  readonly is: "unknown" | "waiting" | "without ground";
  readonly fault: NameFault;
}

function missing(is: Missing["is"], message: string, near: readonly string[] = []): Missing {
  return { is, fault: { fault: "unknown-name", message, nearest: near } };
}

function inValue(outcome: Outcome, name: string): Value | Missing {
  switch (outcome.is) {
    case "value":
      return outcome.value;
    case "waiting":
      return missing("waiting", `${name} has no value yet: ${outcome.fault.message}`);
    default:
      return missing("without ground", `${name} has no value: see its own line`);
  }
}

function asValue({ value }: Characteristic): Value {
  return "unit" in value ? quantityValue(value) : { kind: "thread", thread: value };
}

function calculationOf(
  { record, site }: SourcedRecord<"calc">,
  node: TreeNode | undefined,
  outcome: Outcome,
): Calculation {
  return {
    name: record.name,
    place: placeAt(site, record.at),
    expression: record.expression,
    node,
    outcome,
  };
}

function isCalculation(sourced: SourcedRecord): sourced is SourcedRecord<"calc"> {
  return sourced.record.word === "calc";
}

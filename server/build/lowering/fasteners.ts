/** What holds a joint: threads, bolts, nuts, torques and friction. */
import { nearest } from "../../../grammar/nearest.ts";
import type {
  BoltNode,
  ClassNode,
  FrictionNode,
  NumberNode,
  NutNode,
  SyntaxFix,
  ThreadNode,
  TorqueNode,
} from "../../../grammar/syntax.ts";
import { FRICTION_WORDS, MATERIALS } from "../../../grammar/vocabulary/words.ts";
import { readFriction } from "../../trade/friction.ts";
import type { NutClass, StrengthClass } from "../../trade/strength-class.ts";
import {
  classTexts,
  nutClassTexts,
  readClass,
  readNutClass,
  unknownClass,
} from "../../trade/strength-class.ts";
import type { Thread, ThreadFault } from "../../trade/thread.ts";
import { readBolt, readThread } from "../../trade/thread.ts";
import { LENGTH, TORQUE, TURNING } from "./due.ts";
import { lowerMagnitudes } from "./limits.ts";
import { whole } from "./record-forms.ts";
import type { Bolt, FrictionSpec, Nut, TorqueSpec, ValueLowering } from "./values.ts";

export function lowerThread(lowering: ValueLowering, node: ThreadNode): Thread | undefined {
  const read = readThread(node.text);
  return "fault" in read ? refuseThread(lowering, node, read) : read;
}

/** A thread that no table has: those of its size are offered. */
function refuseThread(lowering: ValueLowering, node: ThreadNode, { fault }: ThreadFault): undefined {
  if (fault.kind === "unreadable") return lowering.complain("unreadable-value", node, fault.expected);
  const known = fault.known.slice(0, 6);
  const size = /^(?:M ?)?[#\d./]+/.exec(node.text)?.[0].replace(" ", "") ?? "";
  const designation = /^(?:M ?[\d.]+(?: ?[x×] ?[\d.]+)?|[^x×]*?(?:UNC|UNF|UNEF|BSW|BSF|BSC|BSP|BA))/.exec(
    node.text,
  )?.[0];
  const ofItsSize = fault.known.filter((thread) => thread.startsWith(size)).slice(0, 4);
  const fixes = (designation === undefined ? [] : ofItsSize).map(
    (thread): SyntaxFix => ({
      start: node.start,
      end: node.start + (designation ?? "").length,
      text: thread,
      title: `Write ${thread}`,
      sure: false,
    }),
  );
  return lowering.complain("unreadable-value", node, `one of the series: ${known.join(", ")}`, { fixes });
}

export function lowerBolt(lowering: ValueLowering, node: BoltNode): Bolt | undefined {
  const count = lowering.count(node.count, { least: 1 });
  const size = readBolt(node.thread.text);
  if ("fault" in size) return refuseThread(lowering, node.thread, size);
  const strength = node.strength && lowerStrength(lowering, node.strength);
  if (count === undefined || (node.strength && strength === undefined)) return undefined;
  return { count, thread: size.thread, length: size.length, strength };
}

function lowerStrength(lowering: ValueLowering, node: ClassNode): StrengthClass | undefined {
  if (node.text === "unknown") return unknownClass;
  const written = `${node.system} ${node.text}`;
  const expected = "a strength class, such as class 8.8, grade 5, class S or class unknown";
  return readClass(written) ?? refuseClass(lowering, node, expected, classTexts);
}

function lowerNutStrength(lowering: ValueLowering, node: ClassNode): NutClass | undefined {
  const expected = "a class of nuts: 04 05 5 6 8 10 12";
  return readNutClass(`class ${node.text}`) ?? refuseClass(lowering, node, expected, nutClassTexts);
}

function refuseClass(
  lowering: ValueLowering,
  node: ClassNode,
  expected: string,
  known: readonly string[],
): undefined {
  const written = `${node.system} ${node.text}`;
  const otherSystem = `${node.system === "class" ? "grade" : "class"} ${node.text}`;
  const near = known.includes(otherSystem)
    ? [otherSystem]
    : nearest(
        node.text,
        known.map((text) => text.replace(/^\w+ /, "")),
        8,
      )
        .map((name) => `${node.system} ${name}`)
        .filter((text) => known.includes(text));
  const fixes = near.map((text) => ({
    start: node.start,
    end: node.end,
    text,
    title: `Write ${text}`,
    sure: false,
  }));
  return lowering.complain("unreadable-value", node, expected, { found: written, fixes });
}

export function lowerNut(lowering: ValueLowering, node: NutNode): Nut | undefined {
  const thread = node.thread && lowerThread(lowering, node.thread);
  if (node.form.text === "tapped") {
    const depth = node.depth && lowering.amount(node.depth, LENGTH);
    return { form: "tapped", thread, depth, material: lowering.oneOf(node.material, MATERIALS) };
  }
  const form = lowering.oneOf(node.form, ["plain", "self_locking", "castle"] as const);
  if (form === undefined) return undefined;
  const strength =
    node.strength && node.strength.text !== "unknown" ? lowerNutStrength(lowering, node.strength) : undefined;
  const height = node.height && lowering.amount(node.height, LENGTH);
  const insert = lowering.oneOf(node.insert, ["nylon", "metal"] as const);
  return { form, insert, thread, strength, height };
}

export function lowerTorque(lowering: ValueLowering, node: TorqueNode): TorqueSpec | undefined {
  if (node.form === "fromClass") return { form: "from class" };
  if (node.form === "byHand") return { form: "by hand" };
  const limits = lowerMagnitudes(lowering, node.limits, TORQUE);
  const then = node.then && lowering.amount(node.then, TURNING);
  if (limits === undefined || (node.then && then === undefined)) return undefined;
  return { form: "limits", limits, then, toSlot: node.toSlot };
}

export function lowerFriction(lowering: ValueLowering, node: FrictionNode): FrictionSpec | undefined {
  switch (node.form) {
    case "nutFactor": {
      const value = figure(lowering, node.value);
      return value === undefined
        ? undefined
        : { form: "nut factor", friction: { kind: "friction", low: value, high: value } };
    }
    case "coefficients": {
      return whole({
        form: "coefficients",
        thread: figure(lowering, node.thread),
        head: figure(lowering, node.head),
      });
    }
    case "word": {
      const read = readFriction(node.word.text);
      if (read === undefined) return lowering.oneOf(node.word, FRICTION_WORDS) && undefined;
      return read.kind === "friction"
        ? { form: "nut factor", friction: read }
        : { form: "no figure", word: read.word };
    }
  }
}

/** A coefficient of friction or a nut factor: a bare number between 0.01 and 1. */
function figure(lowering: ValueLowering, node: NumberNode): number | undefined {
  const value = lowering.number(node)?.value.toNumber();
  if (value === undefined || (value >= 0.01 && value <= 1)) return value;
  return lowering.complain("unreadable-value", node, "a coefficient between 0.01 and 1");
}

/** Words of the notation: blocks as whole snippets, records and facts that may stand here, and closed lists. */
import { CompletionItemKind } from "vscode-languageserver";
import type { BlockWord } from "../../../../grammar/syntax.ts";
import type { BlockEntry, Shape } from "../../../../grammar/vocabulary/shape.ts";
import { textsOf } from "../../../../grammar/vocabulary/texts-of.ts";
import { entriesIn, entriesOf, recordWords, vocabulary } from "../../../../grammar/vocabulary/vocabulary.ts";
import { FRICTION_WORDS, WEEKDAYS } from "../../../../grammar/vocabulary/words.ts";
import type { Build } from "../../../build/build.ts";
import { catalogue } from "../../../rules/catalogue.ts";
import { classTexts } from "../../../trade/strength-class.ts";
import { plainProse } from "../../markdown.ts";
import { changeableWords } from "../../text/due.ts";
import type { FileView } from "../../view.ts";
import type { Asked, Proposal } from "./item.ts";

/** Blocks as a form to fill in: each `<…>` is a place with what may stand there, and the cursor ends behind the last line. */
const BLOCK_FORMS: Readonly<Record<Exclude<BlockWord, "day">, string>> = {
  vehicle: 'vehicle "<Name>"\n  year: <1962>\n  currency: <GBP>',
  supplier: 'supplier <name> "<Title>"\n  lead: <5 d>',
  gauge: 'gauge <name> "<Title>"\n  reads: <0..25 mm>\n  resolution: <0.01 mm>',
  assembly: 'assembly <path> "<Title>"',
  part: 'part <path> "<Title>"',
  joint: [
    'joint <path> "<Title>"',
    "joins: <parts>",
    "bolt: <4 x M8x1.25x30 class 8.8>",
    "torque: <24 N.m ± 10 %>",
    "lock: <self_locking>",
  ].join("\n  "),
  system: 'system <path> "<Title>"\n  fluid: "<DOT 4>"\n  parts: <parts>\n  bleed: <yes>',
  circuit: [
    'circuit <path> "<Title>"',
    "supply: <12 V>",
    "load: <5 A>",
    "wire: <1.5 mm2>",
    "length: <3 m>",
    "fuse: <10 A>",
  ].join("\n  "),
  job: 'job <name> "<Title>"\n  on: <parts>\n  takes: <2..3..5 h>',
  hold: 'hold <name> "<Title>"\n  covers: <vehicle>\n  planned: <date>',
  setup: 'setup <name> "<Title>"\n  with: "<how>"',
  donor: 'donor <name> "<Title>"\n  size: <length 100 mm>',
};

/** A form as a snippet of the protocol. */
function snippetOf(form: string): string {
  let place = 0;
  const filled = form.replaceAll(/<([^<>]*)>/g, (_, words: string) => `\${${++place}:${words}}`);
  return `${filled}\n  $0`;
}

export function blockProposals({ recentBuild: build }: FileView): readonly Proposal[] {
  return vocabulary.blocks.map((entry) => blockProposal(entry, build));
}

function blockProposal(entry: BlockEntry, { today }: Build): Proposal {
  const { word } = entry;
  return {
    label: word,
    kind: CompletionItemKind.Keyword,
    rank: word === "day" || word === "part" ? 0 : 1,
    detail: plainProse(textsOf(entry).help),
    text: word === "day" ? `day ${today}` : `${word} `,
    snippet: snippetOf(word === "day" ? `day ${today} <4 h>` : BLOCK_FORMS[word]),
    documented: { is: "block", word },
  };
}

/** Records that may stand in a block and are not there yet, or may repeat; above the first block any. */
export function recordProposals(
  block: BlockWord | undefined,
  said: ReadonlySet<string>,
): readonly Proposal[] {
  const entries =
    block === undefined ? [...recordWords].flatMap((word) => entriesOf(word).slice(0, 1)) : entriesIn(block);
  return entries
    .filter(({ word, repeats }) => repeats || !said.has(word))
    .map((entry) => ({
      label: entry.word,
      kind: block === "day" ? CompletionItemKind.Event : CompletionItemKind.Property,
      rank: 0,
      detail: plainProse(textsOf(entry).help),
      text: `${entry.word}: `,
      documented: { is: "record", block: block ?? entry.blocks[0] ?? "day", word: entry.word },
    }));
}

/** Words that a value of a shape can be, or be begun or gone on with. */
export function wordsOfShape(shape: Shape): readonly string[] {
  switch (shape.value) {
    case "word":
    case "words":
      return "choices" in shape.of ? shape.of.choices : [];
    case "definition":
      return changeableWords.map(({ word }) => word);
    default:
      return WORDS_OF_SHAPES[shape.value] ?? [];
  }
}

const WORDS_OF_SHAPES: Readonly<Partial<Record<Shape["value"], readonly string[]>>> = {
  limits: ["min", "max"],
  torque: ["from class", "by hand", "min"],
  friction: [...FRICTION_WORDS, "nut_factor", "thread"],
  nut: ["plain", "self_locking", "castle", "tapped"],
  week: [...WEEKDAYS],
  recheck: ["after", "every"],
  stops: ["ran"],
  wireGauge: ["AWG"],
};

/** Words that may follow what is read of a value: `class 8.8` behind a bolt, `from made` behind a life. */
export function followers({ place: { statement, before } }: Asked): readonly string[] {
  const word = statement.word.text;
  const begun = before.trim() !== "";
  if (!begun) return [];
  switch (word) {
    case "bolt":
    case "stud":
      return /\b(?:class|grade)\s*$/.test(before)
        ? classTexts.map((text) => text.split(" ")[1] ?? "")
        : classTexts;
    case "nut":
      return ["class", "height", "nylon", "metal", "in"];
    case "torque":
      return ["then", "to slot"];
    case "life":
      return ["from made", "from fitted", "running"];
    case "recheck":
      return ["running", "then every"];
    case "friction":
      return ["head"];
    case "limit":
      return ["new"];
    case "setting":
    case "set":
      return ["each"];
    default:
      return [];
  }
}

export function wordProposals(words: readonly string[], rank: Proposal["rank"]): readonly Proposal[] {
  return words.map((label) => ({ label, kind: CompletionItemKind.EnumMember, rank }));
}

/** The codes of rules, those that complain about the line first. */
export function waiverProposals(codesHere: ReadonlySet<string>): readonly Proposal[] {
  return [...catalogue.values()].map(({ code, summary }) => ({
    label: code,
    kind: CompletionItemKind.Value,
    rank: codesHere.has(code) ? 0 : 2,
    detail: plainProse(summary),
    text: `${code}: `,
    documented: { is: "rule", code },
  }));
}

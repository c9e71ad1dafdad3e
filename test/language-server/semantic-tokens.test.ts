/** Words are told apart by what they are, and only what has changed is sent again. */
import { expect, test } from "vitest";
import { semanticTokens, tokensEdit } from "../../server/language-server/features/semantic-tokens.ts";
import { TOKEN_MODIFIERS, TOKEN_TYPES } from "../../server/language-server/features/token-legend.ts";
import type { FileView } from "../../server/language-server/view.ts";
import { marked } from "./marked-build.ts";

/** Tokens as `text type modifiers`. */
function unpacked({ document }: FileView, packed: readonly number[]): string[] {
  const lines = document.text.split("\n");
  const tokens: string[] = [];
  let [line, character] = [0, 0];
  for (let at = 0; at < packed.length; at += 5) {
    const [lineDelta = 0, delta = 0, length = 0, type = 0, modifiers = 0] = packed.slice(at, at + 5);
    line += lineDelta;
    character = lineDelta === 0 ? character + delta : delta;
    const text = lines[line]?.slice(character, character + length);
    const said = TOKEN_MODIFIERS.filter((_, bit) => (modifiers & (1 << bit)) !== 0);
    tokens.push([text, TOKEN_TYPES[type], ...said].join(" "));
  }
  return tokens;
}

const LOG = `
  part front.disc "Disc"  # waived near-limit: seen
    limit: thickness min 8.4 mm
  joint front.bolts
  day 2026-05-02
    Dry all day.
    measured: disc thickness 9.12 mm with mic25
    seen: front.bolts by "KT"
    decided: wing renew
    calc: rest = sqrt(disc.thickness)
`;

test("every word that is data has its type; prose has none", () => {
  const { view } = marked(LOG);
  expect(unpacked(view, semanticTokens(view))).toEqual([
    "part keyword",
    "front namespace",
    "disc class declaration",
    '"Disc" string',
    "# waived near-limit: seen comment documentation",
    "limit property",
    "thickness property declaration",
    "8.4 number",
    "mm type",
    "joint keyword",
    "front namespace",
    "bolts struct declaration",
    "day keyword",
    "2026-05-02 number",
    "measured property",
    "disc class",
    "thickness property",
    "9.12 number",
    "mm type",
    "mic25 variable",
    "seen property",
    "front namespace",
    "bolts struct",
    '"KT" string',
    "decided property",
    "wing variable",
    "renew enumMember",
    "calc property",
    "rest variable declaration",
    "sqrt function defaultLibrary",
    "disc class",
    "thickness property",
  ]);
});

test("lines can be asked for by themselves", () => {
  const { view } = marked(LOG);
  expect(unpacked(view, semanticTokens(view, { from: 2, to: 2 }))).toEqual([
    "joint keyword",
    "front namespace",
    "bolts struct declaration",
  ]);
});

test("an edit turns the tokens that were sent into the new ones", () => {
  const after = (before: number[], now: number[]) => {
    const result = [...before];
    for (const { start, deleteCount, data } of tokensEdit(before, now))
      result.splice(start, deleteCount, ...data);
    return result;
  };
  const lists = [[], [1], [1, 2, 3], [1, 9, 3], [1, 2, 2, 3], [3], [1, 2, 3, 1, 2, 3]];
  for (const before of lists) for (const now of lists) expect(after(before, now)).toEqual(now);
  expect(tokensEdit([1, 2, 3], [1, 2, 3])).toEqual([]);
  expect(tokensEdit([1, 2, 3], [1, 9, 3])).toEqual([{ start: 1, deleteCount: 1, data: [9] }]);
});

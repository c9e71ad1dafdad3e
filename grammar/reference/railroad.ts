/** Railroad diagrams of productions, as static SVG: one reads along the line, from left to right. */
import { ebnf } from "./ebnf.ts";
import type { Production, Rule } from "./production.ts";

const CHARACTER = 8;
const BOX_HEIGHT = 22;
const LINE_HEIGHT = 18;
const PADDING = 10;
const GAP = 12;
const RADIUS = 8;
/** Lists of more words than this are drawn in one box. */
const MOST_TRACKS = 6;
const WORDS_PER_ROW = 6;

/** A piece of a diagram: its line runs at `up` below its top. */
interface Piece {
  readonly width: number;
  readonly up: number;
  readonly down: number;
  /** The drawing with its line starting at this place. */
  readonly draw: (x: number, y: number) => string;
}

/** A diagram of a rule; `link` says where the description of a name is, if there is one. */
export function railroad(rule: Rule, link: (name: string) => string | undefined): string {
  const piece = sequence([start, pieceOf(rule.definition, link), end]);
  const width = Math.ceil(piece.width + 2 * GAP);
  const height = Math.ceil(piece.up + piece.down + 2 * GAP);
  const title = `<title>${escaped(ebnf(rule))}</title>`;
  return `<svg role="img" width="${width}" height="${height}" viewBox="0 0 ${width} ${height}">${title}${piece.draw(GAP, GAP + piece.up)}</svg>`;
}

export function escaped(text: string): string {
  return text.replace(/&/g, "&amp;").replace(/</g, "&lt;").replace(/>/g, "&gt;").replace(/"/g, "&quot;");
}

function pieceOf(production: Production, link: (name: string) => string | undefined): Piece {
  switch (production.is) {
    case "text":
      return box([production.text], "text", undefined);
    case "name":
      return box([production.name], "name", link(production.name));
    case "sequence":
      return sequence(production.of.map((each) => pieceOf(each, link)));
    case "choice":
      return choiceOf(production.of, link);
    case "optional":
      return optional(pieceOf(production.of, link));
    case "list":
      return loop(pieceOf(production.of, link), production.separator && pieceOf(production.separator, link));
  }
}

function choiceOf(of: readonly Production[], link: (name: string) => string | undefined): Piece {
  const words = of.flatMap((each) => (each.is === "text" ? [each.text] : []));
  if (words.length < of.length || words.length <= MOST_TRACKS)
    return choice(of.map((each) => pieceOf(each, link)));
  const rows = Array.from({ length: Math.ceil(words.length / WORDS_PER_ROW) }, (_, row) =>
    words.slice(row * WORDS_PER_ROW, (row + 1) * WORDS_PER_ROW).join(" | "),
  );
  return box(rows, "text", undefined);
}

function box(lines: readonly string[], kind: "text" | "name", href: string | undefined): Piece {
  const longest = Math.max(...lines.map((line) => line.length));
  const width = longest * CHARACTER + 2 * PADDING;
  const height = BOX_HEIGHT + (lines.length - 1) * LINE_HEIGHT;
  const draw = (x: number, y: number) => {
    const top = y - height / 2;
    const shape = `<rect class="${kind}" x="${x}" y="${top}" width="${width}" height="${height}" rx="${kind === "text" ? BOX_HEIGHT / 2 : 2}"/>`;
    const written = lines
      .map(
        (line, row) =>
          `<text x="${x + width / 2}" y="${top + 15 + row * LINE_HEIGHT}">${escaped(line)}</text>`,
      )
      .join("");
    return href === undefined ? shape + written : `<a href="${href}">${shape}${written}</a>`;
  };
  return { width, up: height / 2, down: height / 2, draw };
}

const start: Piece = cap();
const end: Piece = cap();

function cap(): Piece {
  return { width: 2, up: 8, down: 8, draw: (x, y) => path(`M${x} ${y - 8}v16`) };
}

function sequence(pieces: readonly Piece[]): Piece {
  const width = pieces.reduce((sum, piece) => sum + piece.width, 0) + GAP * (pieces.length - 1);
  const draw = (x: number, y: number) => {
    let at = x;
    return pieces
      .map((piece, index) => {
        const line = index === 0 ? "" : path(`M${at} ${y}h${GAP}`);
        if (index > 0) at += GAP;
        const drawn = line + piece.draw(at, y);
        at += piece.width;
        return drawn;
      })
      .join("");
  };
  return { width, up: highest(pieces, "up"), down: highest(pieces, "down"), draw };
}

function highest(pieces: readonly Piece[], side: "up" | "down"): number {
  return Math.max(0, ...pieces.map((piece) => piece[side]));
}

/** Tracks below each other, the first on the line. */
function choice(pieces: readonly Piece[]): Piece {
  const inner = Math.max(...pieces.map(({ width }) => width));
  const width = inner + 4 * RADIUS;
  const depths: number[] = [];
  let depth = 0;
  for (const [index, piece] of pieces.entries()) {
    depth += index === 0 ? 0 : Math.max(piece.up + GAP / 2, 2 * RADIUS);
    depths.push(depth);
    depth += piece.down;
  }
  const draw = (x: number, y: number) =>
    pieces.map((piece, index) => track(piece, x, y, depths[index] ?? 0, inner)).join("");
  return { width, up: pieces[0]?.up ?? 0, down: depth, draw };
}

function track(piece: Piece, x: number, y: number, depth: number, inner: number): string {
  const from = x + 2 * RADIUS;
  const rest = inner - piece.width;
  const way =
    depth === 0
      ? path(`M${x} ${y}h${2 * RADIUS}`) + path(`M${from + piece.width} ${y}h${rest + 2 * RADIUS}`)
      : path(
          `M${x} ${y}q${RADIUS} 0 ${RADIUS} ${RADIUS}v${depth - 2 * RADIUS}q0 ${RADIUS} ${RADIUS} ${RADIUS}`,
        ) +
        path(
          `M${from + piece.width} ${y + depth}h${rest}q${RADIUS} 0 ${RADIUS} ${-RADIUS}v${2 * RADIUS - depth}q0 ${-RADIUS} ${RADIUS} ${-RADIUS}`,
        );
  return way + piece.draw(from, y + depth);
}

/** The piece on the line, and a way around it above. */
function optional(piece: Piece): Piece {
  const rise = Math.max(piece.up + GAP / 2, 2 * RADIUS);
  const width = piece.width + 4 * RADIUS;
  const draw = (x: number, y: number) =>
    path(`M${x} ${y}h${2 * RADIUS}`) +
    piece.draw(x + 2 * RADIUS, y) +
    path(`M${x + 2 * RADIUS + piece.width} ${y}h${2 * RADIUS}`) +
    path(
      `M${x} ${y}q${RADIUS} 0 ${RADIUS} ${-RADIUS}v${2 * RADIUS - rise}q0 ${-RADIUS} ${RADIUS} ${-RADIUS}` +
        `h${piece.width}q${RADIUS} 0 ${RADIUS} ${RADIUS}v${rise - 2 * RADIUS}q0 ${RADIUS} ${RADIUS} ${RADIUS}`,
    );
  return { width, up: rise, down: piece.down, draw };
}

/** The piece on the line, and a way back below it, past the separator. */
function loop(piece: Piece, separator: Piece | undefined): Piece {
  const back = separator ?? { width: 0, up: 0, down: 0, draw: () => "" };
  const inner = Math.max(piece.width, back.width);
  const fall = Math.max(piece.down + back.up + GAP / 2, 2 * RADIUS);
  const width = inner + 4 * RADIUS;
  const draw = (x: number, y: number) => {
    const [left, right] = [x + 2 * RADIUS, x + 2 * RADIUS + inner];
    const middle = left + (inner - back.width) / 2;
    const bend = `q${RADIUS} 0 ${RADIUS} ${RADIUS}v${fall - 2 * RADIUS}q0 ${RADIUS} ${-RADIUS} ${RADIUS}`;
    const bendBack = `q${-RADIUS} 0 ${-RADIUS} ${-RADIUS}v${2 * RADIUS - fall}q0 ${-RADIUS} ${RADIUS} ${-RADIUS}`;
    return (
      path(`M${x} ${y}h${2 * RADIUS}`) +
      piece.draw(left, y) +
      path(`M${left + piece.width} ${y}h${right - left - piece.width + 2 * RADIUS}`) +
      path(`M${right} ${y}${bend}H${middle + back.width}`) +
      back.draw(middle, y + fall) +
      path(`M${middle} ${y + fall}H${left}${bendBack}`)
    );
  };
  return { width, up: piece.up, down: fall + back.down, draw };
}

function path(d: string): string {
  return `<path d="${d}"/>`;
}

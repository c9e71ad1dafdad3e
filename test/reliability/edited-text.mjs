// An editor's own account of a text that is changed, and the chance that repeats with its seed.

/** Numbers that repeat with their seed (mulberry32). */
export function chanceOf(seed) {
  let state = seed >>> 0;
  return (below) => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return Math.floor((((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32) * below);
  };
}

/** The text after one change as the protocol words it. */
export function applied(text, { range, text: piece }) {
  if (range === undefined) return piece;
  return text.slice(0, offsetOf(text, range.start)) + piece + text.slice(offsetOf(text, range.end));
}

/** As the protocol counts: lines end at CR LF, LF or CR; what is beyond a line or the text is its end. */
export function offsetOf(text, { line, character }) {
  let start = 0;
  for (let passed = 0; passed < line; passed++) {
    const found = /\r\n|\n|\r/g;
    found.lastIndex = start;
    const match = found.exec(text);
    if (match === null) return text.length;
    start = match.index + match[0].length;
  }
  const rest = text.slice(start);
  const length = /\r|\n/.exec(rest)?.index ?? rest.length;
  return start + Math.min(character, length);
}

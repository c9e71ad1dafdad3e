/** A log's text as it may be shown on a terminal: no control characters, so that it cannot steer it. */
export function plain(text: string): string {
  // Hardly any text has one. None of them is beyond the first plane.
  let at = 0;
  while (at < text.length && !steers(text.charCodeAt(at))) at++;
  if (at === text.length) return text;
  return [...text]
    .map((character) => (steers(character.codePointAt(0) ?? 0) ? "\ufffd" : character))
    .join("");
}

const TAB = 0x09;

/** What could move a cursor, hide text or turn its direction: control characters but the tab, and the bidirectional ones. */
function steers(code: number): boolean {
  const control = code < 0x20 || (code >= 0x7f && code <= 0x9f);
  const directional =
    code === 0x200e ||
    code === 0x200f ||
    (code >= 0x202a && code <= 0x202e) ||
    (code >= 0x2066 && code <= 0x2069);
  return (control && code !== TAB) || directional;
}

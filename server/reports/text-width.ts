/** Text in a drawing, which does not break its own lines. */
import { escapeHtml } from "./render-html.ts";

/** Text that stays text; characters that no document may hold are left out. */
export function plainText(text: string): string {
  return escapeHtml(text.replace(/[\p{Cc}\p{Cs}\uFFFE\uFFFF]/gu, " "));
}

/** As much of a text as has room, safe to write out. */
export function fitted(text: string, room: number, size: number): string {
  if (widthOf(text, size) <= room) return plainText(text);
  let left = room / size - emsOf("…");
  let shown = "";
  for (const letter of text) {
    left -= emsOf(letter);
    if (left < 0) break;
    shown += letter;
  }
  return plainText(`${shown.trimEnd()}…`);
}

/** A generous guess of how wide a text is, in a serif of the drawing or a wide face of an editor. */
export function widthOf(text: string, size: number): number {
  let ems = 0;
  for (const letter of text) ems += emsOf(letter);
  return ems * size;
}

function emsOf(letter: string): number {
  if (/[\u1100-\uFFDC\u{1F000}-\u{3FFFF}]/u.test(letter)) return 1;
  if (/[mwMW%@…]/.test(letter)) return 0.98;
  if (/[A-ZÀ-Þ]/.test(letter)) return 0.74;
  return /[ .,;:'|ijlI!()ftr-]/.test(letter) ? 0.38 : 0.62;
}

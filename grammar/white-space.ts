/** White space within a line: spaces and tabs, and the no-break and thin spaces that word processors put in. */

const TAB = 9;
const VERTICAL_TAB = 11;
const FORM_FEED = 12;
const SPACE = 32;
const NO_BREAK_SPACE = 0xa0;
const EN_QUAD = 0x2000;
const HAIR_SPACE = 0x200a;
const NARROW_NO_BREAK_SPACE = 0x202f;

/** The same characters as a class of a regular expression. */
export const SPACE_CLASS = "[ \\t\\v\\f\\u00a0\\u202f\\u2000-\\u200a]";

/** True for what reads as a space. Only space and tab indent a line. */
export function isSpace(code: number): boolean {
  return (
    code === SPACE ||
    code === TAB ||
    code === NO_BREAK_SPACE ||
    code === NARROW_NO_BREAK_SPACE ||
    (code >= EN_QUAD && code <= HAIR_SPACE) ||
    code === VERTICAL_TAB ||
    code === FORM_FEED
  );
}

/** True for a character that indents the line which it begins. */
export function isIndent(code: number): boolean {
  return code === SPACE || code === TAB;
}

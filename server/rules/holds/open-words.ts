/** What is open, as part of a message: the first few, and how many more there are. */
import { list } from "../words.ts";

const MOST_NAMED = 3;

/** `a`, `a and b`, `a, b, c and 4 more`. */
export function listOpen(open: readonly string[]): string {
  const more = open.length - MOST_NAMED;
  return more <= 0 ? list(open) : list([...open.slice(0, MOST_NAMED), `${more} more`]);
}

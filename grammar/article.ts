/** `an area`, `a length`: words as one of their kind. */
export function withArticle(words: string): string {
  return `${/^[aeiou]/.test(words) ? "an" : "a"} ${words}`;
}

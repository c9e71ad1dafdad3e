/** Where a line of one text would stand in another version of it. */

/**
 * The line itself if the other text has it; else the place below the nearest line above it that the other text has. Of
 * several alike the one at the most similar place is meant. Lines are counted from 0.
 */
export function counterpartLine(text: string, other: string, line: number): number {
  const [lines, others] = [text.split(/\r?\n/), other.split(/\r?\n/)];
  for (let above = Math.min(line, lines.length - 1); above >= 0; above--) {
    const words = lines[above] ?? "";
    if (words.trim() === "") continue;
    const found = nearest(others, words, above);
    if (found !== undefined) return Math.min(found + (above === line ? 0 : 1), others.length - 1);
  }
  return 0;
}

function nearest(lines: readonly string[], words: string, place: number): number | undefined {
  const alike = lines.flatMap((line, index) => (line === words ? [index] : []));
  return alike.sort((a, b) => Math.abs(a - place) - Math.abs(b - place))[0];
}

/** Names and days as a narrow view has room for them; the tooltip and the spoken words have them in full. */

/** Letters of a name, so that the short fact behind it is still seen. */
const LONGEST_NAME = 24;

/** A name, cut behind a word where it is long. */
export function nameInBrief(name: string): string {
  if (name.length <= LONGEST_NAME) return name;
  const start = name.slice(0, LONGEST_NAME + 1);
  const words = start.includes(" ") ? start.slice(0, start.lastIndexOf(" ")) : start.slice(0, LONGEST_NAME);
  return `${words.replace(/[\s,;:.–-]+$/, "")}…`;
}

/**
 * `7 Nov`, with the year where it is another than today's.
 * @param day `2026-11-07`
 * @param today the same
 * @param language of the editor
 */
export function dayInBrief(day: string, today: string, language: string): string {
  const isOfThisYear = day.slice(0, 4) === today.slice(0, 4);
  return new Intl.DateTimeFormat(language === "en" ? "en-GB" : language, {
    day: "numeric",
    month: "short",
    timeZone: "UTC",
    ...(isOfThisYear ? {} : { year: "numeric" }),
  }).format(new Date(`${day}T00:00:00Z`));
}

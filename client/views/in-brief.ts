/** Names and days as a narrow view has room for them; the tooltip and the spoken words have them in full. */

/** Letters of a name, so that the short fact behind it is still seen. */
const LONGEST_NAME = 20;

/** Days within which a day is told without its year: no other of that name is as near. */
const WITHOUT_YEAR = 180;

/** Names, cut behind a word where they are long; those that would then be alike are left as they are. */
export function namesInBrief(names: readonly string[]): readonly string[] {
  const brief = names.map(nameInBrief);
  return names.map((name, index) => {
    const short = brief[index] ?? name;
    return brief.some((other, at) => other === short && names[at] !== name) ? name : short;
  });
}

function nameInBrief(name: string): string {
  if (name.length <= LONGEST_NAME) return name;
  const start = name.slice(0, LONGEST_NAME + 1);
  const words = start.includes(" ") ? start.slice(0, start.lastIndexOf(" ")) : start.slice(0, LONGEST_NAME);
  return `${words.replace(/(?<![\s,;:.–-])[\s,;:.–-]+$/, "")}…`;
}

/**
 * `7 Nov`, with the year where it is far from today.
 * @param day `2026-11-07`
 * @param today the same
 * @param language of the editor
 */
export function dayInBrief(day: string, today: string, language: string): string {
  const date = new Date(`${day}T00:00:00Z`);
  const apart = Math.abs(date.getTime() - new Date(`${today}T00:00:00Z`).getTime()) / 86_400_000;
  return new Intl.DateTimeFormat(language === "en" ? "en-GB" : language, {
    day: "numeric",
    month: "short",
    timeZone: "UTC",
    ...(apart <= WITHOUT_YEAR ? {} : { year: "numeric" }),
  }).format(date);
}

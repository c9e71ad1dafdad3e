/** The story in the book: month by month, each day with its prose, its facts in brief, and its photos. */
import type { BookPhoto } from "./book-photo.ts";
import { escapeHtml } from "./render-html.ts";
import type { StoryDay, StoryPart } from "./story.ts";

export interface StoryMonth {
  readonly id: string;
  readonly title: string;
  readonly days: readonly StoryDay[];
}

const MONTHS = [
  "January",
  "February",
  "March",
  "April",
  "May",
  "June",
  "July",
  "August",
  "September",
  "October",
  "November",
  "December",
];

export function storyMonths(days: readonly StoryDay[]): readonly StoryMonth[] {
  const months = [...new Set(days.map(({ date }) => date.slice(0, 7)))];
  return months.map((month) => {
    const [year = "", number = ""] = month.split("-");
    return {
      id: `story-${month}`,
      title: `${MONTHS[Number(number) - 1] ?? number} ${year}`,
      days: days.filter(({ date }) => date.startsWith(month)),
    };
  });
}

export function storySection(months: readonly StoryMonth[], photos: ReadonlyMap<string, BookPhoto>): string {
  if (months.length === 0) return "<p>The diary has no days yet.</p>";
  return months
    .map(({ id, title, days }) =>
      [`<h3 id="${id}">${title}</h3>`, ...days.map((day) => dayArticle(day, photos))].join("\n"),
    )
    .join("\n");
}

function dayArticle({ date, hours, parts }: StoryDay, photos: ReadonlyMap<string, BookPhoto>): string {
  const worked = hours === undefined ? "" : ` <span class="hours">${escapeHtml(hours)}</span>`;
  const runs = runsOf(parts).map((run) =>
    run.is === "facts" ? factList(run.facts) : otherPart(run.part, date, photos),
  );
  return `<article class="day">\n<h4>${date}${worked}</h4>\n${runs.join("\n")}\n</article>`;
}

type Fact = Extract<StoryPart, { readonly is: "fact" }>;
type Run =
  | { readonly is: "facts"; readonly facts: Fact[] }
  | { readonly is: "other"; readonly part: Exclude<StoryPart, Fact> };

/** Facts that follow each other are one list. */
function runsOf(parts: readonly StoryPart[]): readonly Run[] {
  const runs: Run[] = [];
  for (const part of parts) {
    const last = runs.at(-1);
    if (part.is !== "fact") runs.push({ is: "other", part });
    else if (last?.is === "facts") last.facts.push(part);
    else runs.push({ is: "facts", facts: [part] });
  }
  return runs;
}

function factList(facts: readonly Fact[]): string {
  const lines = facts.map(
    ({ word, text }) => `<li><span class="word">${escapeHtml(word)}</span> ${escapeHtml(text)}</li>`,
  );
  return `<ul class="facts">${lines.join("")}</ul>`;
}

function otherPart(
  part: Exclude<StoryPart, Fact>,
  date: string,
  photos: ReadonlyMap<string, BookPhoto>,
): string {
  if (part.is === "prose") return part.text === "" ? "" : `<p>${escapeHtml(part.text)}</p>`;
  const { path, caption, of } = part;
  const said = escapeHtml(caption ?? (of === undefined ? `Photo of ${date}` : `Photo of ${of}, ${date}`));
  const photo = photos.get(path) ?? { is: "missing", why: "it was not read" };
  if (photo.is === "missing")
    return `<figure class="missing"><p>No picture: ${escapeHtml(path)}. ${capital(escapeHtml(photo.why))}.</p><figcaption>${said}</figcaption></figure>`;
  const size = photo.size === undefined ? "" : ` width="${photo.size.width}" height="${photo.size.height}"`;
  return `<figure><img src="${escapeHtml(photo.uri)}" alt="${said}"${size}><figcaption>${said}</figcaption></figure>`;
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/** What is told of a job, hold point, supplier, gauge, setup or donor, and of what has a name only in the diary. */
import type { Build } from "../../../build/build.ts";
import type { NamedDefinition } from "../../../build/definitions.ts";
import { recordOf } from "../../../build/judgement.ts";
import { sayOpenItemByName } from "../../../build/open-item.ts";
import { openItems } from "../../../build/openness.ts";
import { placeAt, textAt } from "../../../build/source.ts";
import { formatDecimal } from "../../../quantities/decimal.ts";
import { block, code, escaped, list, paragraphs } from "../../markdown.ts";

const LONGEST_LIST = 8;

export function describeDefinition(build: Build, definition: NamedDefinition): string {
  const title = definition.title === undefined ? "" : `**${escaped(definition.title)}** `;
  const head = `${title}${code(definition.name)}  \n*${definition.kind === "hold" ? "hold point" : definition.kind}*`;
  return paragraphs(head, state(build, definition), records(definition));
}

/** Its records, word for word: each says more than a summary of it would. */
function records({ records: all }: NamedDefinition): string | undefined {
  // From the start of white space alone: else a lot of it takes time in the square of its length.
  const lines = all.map(({ record, site }) =>
    textAt(placeAt(site, record.at)).replaceAll(/(?<!\s)\s*\n\s*/g, " "),
  );
  return lines.length === 0 ? undefined : block(lines.slice(0, LONGEST_LIST * 2).join("\n"), "cotter");
}

function state(build: Build, definition: NamedDefinition): string | undefined {
  switch (definition.kind) {
    case "job":
      return jobState(build, definition);
    case "hold":
      return holdState(build, definition);
    case "gauge":
      return gaugeState(build, definition);
    default:
      return undefined;
  }
}

function jobState({ standing }: Build, definition: NamedDefinition): string | undefined {
  const job = standing.jobs.get(definition);
  if (job === undefined) return undefined;
  const worked = `${formatDecimal(job.worked, job.worked.decimalPlaces())} h worked`;
  if (job.done !== undefined) return `done on ${job.done.date}, ${worked}`;
  return job.started === undefined ? "not begun" : `begun on ${job.started.date}, ${worked}`;
}

function holdState({ standing }: Build, definition: NamedDefinition): string | undefined {
  const hold = standing.holds.get(definition);
  if (hold === undefined) return undefined;
  const planned = recordOf(definition, "planned")?.date;
  const released =
    hold.released === undefined
      ? `not released${planned === undefined ? "" : `, planned for ${planned}`}`
      : hold.lapsed === undefined
        ? `released on ${hold.released.date}`
        : `released on ${hold.released.date}, lapsed on ${hold.lapsed.date}`;
  const open = openItems(standing, definition);
  const shown = open.slice(0, LONGEST_LIST).map((item) => escaped(sayOpenItemByName(item)));
  const more = open.length > shown.length ? [`and ${open.length - shown.length} more`] : [];
  const head = open.length === 0 ? "nothing is open" : `${open.length} open:`;
  return paragraphs(`${escaped(released)}; ${head}`, list([...shown, ...more]));
}

function gaugeState({ standing }: Build, definition: NamedDefinition): string {
  const calibrated = standing.gauges.get(definition)?.calibrated;
  if (calibrated === undefined) return "no calibration is written down";
  if (calibrated.until === undefined) return `calibrated on ${calibrated.date}`;
  const over = calibrated.until < standing.date ? ", which is over" : "";
  return `calibrated on ${calibrated.date}, good until ${calibrated.until}${over}`;
}

// What the peers read: the same kind of diary in their own languages, as long as the log.

const PARTS = ["upright", "hub", "disc", "caliper", "hose", "top_arm", "bottom_arm", "damper", "spring"];

function* days() {
  const day = new Date(Date.UTC(2020, 1, 1));
  for (let index = 0; ; index++) {
    const part = `axle${index % 100}.left.${PARTS[index % PARTS.length]}`;
    yield {
      date: day.toISOString().slice(0, 10),
      part,
      thickness: (8 + (index % 17) / 10).toFixed(2),
      index,
    };
    day.setUTCDate(day.getUTCDate() + 1);
  }
}

/** Lines of texts until there are enough. */
function upTo(count, before, lines, after) {
  const all = [...before];
  for (const day of days()) {
    if (all.length >= count) break;
    all.push(...lines(day));
  }
  return [...all, ...after].join("\n");
}

export function yamlText(count) {
  return upTo(
    count,
    ["vehicle: Tarrant Plover", "days:"],
    ({ date, part, thickness, index }) => [
      `  - date: "${date}"`,
      "    told: Rain on the roof all day, radio on, nobody rang.",
      `    measured: { part: ${part}, thickness: ${thickness} mm }`,
      `    removed: [${part}, bolts]`,
      `    worked: ${index % 7} h`,
    ],
    [],
  );
}

export function jsonText(count) {
  return upTo(
    count,
    ["{", '  "vehicle": "Tarrant Plover",', '  "days": ['],
    ({ date, part, thickness, index }) => [
      "    {",
      `      "date": "${date}",`,
      '      "told": "Rain on the roof all day, radio on, nobody rang.",',
      `      "measured": { "part": "${part}", "thickness": ${thickness} },`,
      `      "removed": ["${part}", "bolts"],`,
      `      "worked": ${index % 7}`,
      "    },",
    ],
    ["    {}", "  ]", "}", ""],
  );
}

export function bashText(count) {
  return upTo(
    count,
    ["#!/bin/bash", "vehicle='Tarrant Plover'"],
    ({ date, part, thickness, index }) => [
      `day_${index}() {`,
      "  # Rain on the roof all day, radio on, nobody rang.",
      `  local thickness_${index % 50}=${thickness}`,
      `  measured "${part}" "$thickness_${index % 50}" on ${date}`,
      `  if [ "$vehicle" ]; then removed ${part} bolts; fi`,
      "}",
    ],
    [],
  );
}

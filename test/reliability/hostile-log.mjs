// A log from a stranger, with everything in it that could steer a terminal, a browser, a spreadsheet or a page of
// Markdown, put where words of the log's own may stand: so that every report has some of them.

/** Stands in every attack: an output without it shows none of them, and proves nothing. */
export const SIGN = "zebra";

export const ATTACKS = [
  "\u001b[2J\u001b]0;owned\u0007",
  "\u009b31m",
  "\u202eright to left",
  "<img src=x onerror=alert(1)>",
  "<script>alert(1)</script>",
  "=HYPERLINK(1)",
  "+1+cmd",
  "-2+3",
  "@SUM(1)",
  "[click](command:run)",
  "![x](file:///etc/passwd)",
  "``` [click](command:run) `` \\",
  "| cell | `code` **bold**",
  "</style></title><base href=//evil.example>",
].map((attack) => `${attack} ${SIGN}`);

/** @param later another reading of everything, so that two revisions of the log differ */
export function hostileLog({ later = false } = {}) {
  const block = (words, n) => `supplier s${n} "${words}"
  lead: 3 d
  web: "${words}"

part p${n} "${words}"
  number: "${words}"
  maker: "${words}"
  supplier: s${n}
  price: 10.00 GBP
  limit: bore max 25.05 mm
  made: 2020-01-01
  life: 10 year from made
  setting: gap 0.30 mm ± 0.05 mm
  test: free_turning "${words}"

part q${n} "${words}"
  supplier: s${n}

joint j${n} "${words}"
  joins: p${n}, q${n}
  torque: 24 N.m ± 10 %

job a${n} "${words}"
  takes: 3 h
  needs: 2 x p${n}, 1 x q${n}

hold h${n} "${words}"
  planned: 2026-09-01

`;
  const day = (words, n) => `  removed: p${n} -- ${words}
  ${words}
  removed: p${n}
  tagged: p${n} "${words}"
  decided: q${n} renew "${words}"
  snag: snag${n} on p${n} "${words}"
  spent: 12.00 GBP on p${n} "${words}"
  ordered: 1 x q${n} at 2.00 GBP from s${n} ref "${words}"
  photo: "${words}"
  photo: "photos/${n}.png" "${words}"
  measured: p${n} bore ${later ? "25.03" : "25.5"} mm ${words}
  measured: p${n} bore ${later ? "25.03" : "25.5"} mm
  bad${n}: ${words}
`;
  return `vehicle "${ATTACKS[3]}${ATTACKS[0]}"
  currency: GBP
  today: 2026-06-01

${ATTACKS.map(block).join("")}
day 2026-05-02 3 h
${ATTACKS.map(day).join("")}`;
}

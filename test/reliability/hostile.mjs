// A log from a stranger, with everything in it that could steer a terminal, a browser, a spreadsheet or a page of
// Markdown, through the commands of the built program in every form.
import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { program } from "./programs.mjs";

export const COMMANDS = [
  "check",
  "order",
  "timeline",
  "joints",
  "outstanding",
  "costs",
  "parts",
  "lives",
  "settings",
  "book",
];
export const FORMS = ["text", "json", "csv", "markdown", "html"];

/** Each is put where words of the log's own may stand. */
const ATTACKS = [
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
  "| cell | `code` **bold**",
  "</style></title><base href=//evil.example>",
];

function hostileLog() {
  const block = (words, n) => `part p${n} "${words}"
  number: "${words}"
  supplier: s${n}
  price: 10 GBP
  lead: 3 days
  limit: bore max 25.05 mm

supplier s${n} "${words}"

part q${n} "${words}"

joint j${n} "${words}"
  joins: p${n}, q${n}
  torque: 24 N.m ± 10 %

activity a${n} "${words}"
  takes: 3 h
  needs: p${n}

`;
  const day = (words, n) => `  removed: p${n} -- ${words}
  ${words}
  snag: s${n} ${words}
  spent: 12 GBP ${words}
  photo: "${words}"
  measured: p${n} bore 25.5 mm ${words}
  bad${n}: ${words}
`;
  return `vehicle "${ATTACKS[3]}${ATTACKS[0]}"\n\n${ATTACKS.map(block).join("")}hold roll "${ATTACKS[4]}"\n\nday 2026-05-02 3 h\n${ATTACKS.map(day).join("")}`;
}

/** Calls each command in each form that it has. Answers with how many gave something, and what was not harmless. */
export function callAll(commands, forms) {
  const folder = mkdtempSync(path.join(tmpdir(), "cotter-hostile-"));
  const [called, faults] = [[], []];
  try {
    writeFileSync(path.join(folder, "build.cotter"), hostileLog());
    for (const command of commands)
      for (const form of forms) {
        const words = [command, "--build", folder, ...(form === "text" ? [] : [`--${form}`])];
        const ended = spawnSync(process.execPath, [program("cotter"), ...words], {
          encoding: "utf8",
          maxBuffer: 2 ** 26,
        });
        const name = `${command} as ${form}`;
        // A form that the command has not is refused.
        if (ended.status === 2 && /Unknown option/.test(ended.stderr)) continue;
        if (ended.status > 1 || ended.status === null) faults.push(`${name}: ${ended.stderr.slice(0, 300)}`);
        called.push(name);
        // A book is a page whichever form is not asked for.
        const look = command === "book" && form === "text" ? "html" : form;
        faults.push(...HARM[look](ended.stdout).map((harm) => `${name}: ${harm}`));
        faults.push(...HARM.text(ended.stderr).map((harm) => `${name}, standard error: ${harm}`));
      }
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
  return { called, faults };
}

function found(text, pattern, what) {
  const at = text.search(pattern);
  return at < 0 ? [] : [`${what}: ${JSON.stringify(text.slice(Math.max(0, at - 30), at + 50))}`];
}

// biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is looked for.
const STEERING = /[\x00-\x08\x0b-\x1f\x7f-\x9f\u200e\u200f\u202a-\u202e\u2066-\u2069]/;
// biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is looked for.
const ESCAPES = /[\x00-\x08\x0b-\x1f]/;

const HARM = {
  text: (text) => found(text, STEERING, "a control character"),
  json: (text) => {
    JSON.parse(text);
    return found(text, ESCAPES, "a control character");
  },
  csv: (text) =>
    cells(text)
      .filter((cell) => /^[=+\-@\t\r]/.test(cell) && !/^[+-]?\d+(\.\d+)?$/.test(cell))
      .map((cell) => `a formula: ${cell}`),
  markdown: (text) => [
    ...found(text, /(?<!\\)<(?:img|script|base|\/style)/i, "markup"),
    ...found(text, /(?<!\\)\[click(?<!\\)\]/, "a link"),
  ],
  html: (page) => [
    ...found(page, /<script|<base|<img(?![^>]*src="data:image)|<iframe|<object/i, "an element"),
    ...found(page, /<[^>]*\son\w+\s*=/i, "a handler"),
    ...found(page, /(?:href|src)\s*=\s*"?(?:javascript|command|file|https?):/i, "a link"),
    ...(/http-equiv="Content-Security-Policy"[^>]*default-src 'none'/.test(page)
      ? []
      : ["no security policy"]),
  ],
};

/** The cells of a CSV text (RFC 4180). */
function cells(text) {
  return [...text.matchAll(/(?:^|,|\r\n)(?:"((?:[^"]|"")*)"|([^,"\r\n]*))/g)].map(
    ([, quoted, bare]) => quoted?.replaceAll('""', '"') ?? bare,
  );
}

// A log from a stranger, with its record in git, through the commands of the built program in every form.
import { spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { ATTACKS, hostileLog, SIGN } from "./hostile-log.mjs";
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
  "changes",
  "history",
];
export const FORMS = ["text", "json", "csv", "markdown", "html"];

/** What names everything by its path, and shows no words of the log: nothing of it can do harm. */
const WITHOUT_WORDS = ["costs as json", "costs as csv"];

/** Words behind a command. */
const OF_COMMAND = { changes: ["HEAD~1", "HEAD"], history: ["p0"] };

/**
 * Calls each command in each form that it has. Answers with those that gave something, and what was not harmless: one
 * that shows no word of the log at all among them.
 */
export function callAll(commands, forms) {
  const folder = mkdtempSync(path.join(tmpdir(), "cotter-hostile-"));
  const [called, faults] = [[], []];
  try {
    commit(folder, hostileLog());
    commit(folder, hostileLog({ later: true }));
    const settings = readFileSync(path.join(folder, ".git/config"), "utf8");
    for (const command of commands)
      for (const form of forms) {
        const words = [
          command,
          ...(OF_COMMAND[command] ?? []),
          "--build",
          folder,
          ...(form === "text" ? [] : [`--${form}`]),
        ];
        const ended = spawnSync(process.execPath, [program("cotter"), ...words], {
          encoding: "utf8",
          maxBuffer: 2 ** 26,
        });
        const name = `${command} as ${form}`;
        // A form that the command has not is refused.
        if (ended.status === 2 && /Unknown option/.test(ended.stderr)) continue;
        if (ended.status > 1 || ended.status === null) faults.push(`${name}: ${ended.stderr.slice(0, 300)}`);
        called.push(name);
        if (!ended.stdout.includes(SIGN) && !WITHOUT_WORDS.includes(name))
          faults.push(`${name}: shows nothing of the log`);
        // A book is a page whichever form is not asked for.
        const look = command === "book" && form === "text" ? "html" : form;
        faults.push(...HARM[look](ended.stdout).map((harm) => `${name}: ${harm}`));
        faults.push(...HARM.text(ended.stderr).map((harm) => `${name}, standard error: ${harm}`));
      }
    if (readFileSync(path.join(folder, ".git/config"), "utf8") !== settings)
      faults.push("the settings of the repository were written to");
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
  return { called, faults };
}

/** Writes the log and takes it into the record, by somebody whose name is an attack too. */
function commit(folder, log) {
  writeFileSync(path.join(folder, "build.cotter"), log);
  const git = (...words) => spawnSync("git", words, { cwd: folder, encoding: "utf8" });
  const name = `${ATTACKS[4]} ${ATTACKS[2]}`;
  git("init", "--quiet");
  git("add", "build.cotter");
  const as = ["-c", `user.name=${name}`, "-c", "user.email=z@zebra.example", "-c", "commit.gpgsign=false"];
  const { status, stderr } = git(...as, "commit", "--quiet", "-m", ATTACKS.join(" "));
  if (status !== 0) throw new Error(`no commit: ${stderr}`);
}

function found(text, pattern, what) {
  const at = text.search(pattern);
  return at < 0 ? [] : [`${what}: ${JSON.stringify(text.slice(Math.max(0, at - 30), at + 50))}`];
}

// biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is looked for.
const STEERING = /[\x00-\x08\x0b-\x1f\x7f-\x9f\u200e\u200f\u202a-\u202e\u2066-\u2069]/;
// biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is looked for.
const ESCAPES = /[\x00-\x08\x0b-\x1f]/;

/** What would do harm, by the form that shows it. */
export const HARM = {
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

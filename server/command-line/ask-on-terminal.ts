/** Yes-or-no questions on a terminal; the answer of an empty line is no. */
import type { Interface } from "node:readline/promises";
import { createInterface } from "node:readline/promises";
import { Failure } from "./command.ts";

/** Puts one question; the words that a reader types stand behind it. */
export type Ask = (question: string) => Promise<boolean>;

/** Puts questions one after the other. One that is stopped before its answer ends the command. */
export async function askOnTerminal<T>(questions: (ask: Ask) => Promise<T>): Promise<T> {
  const terminal = createInterface({ input: process.stdin, output: process.stdout });
  try {
    return await questions((question) => yesOrNo(terminal, `${question} [y/N] `));
  } finally {
    terminal.close();
  }
}

async function yesOrNo(terminal: Interface, prompt: string): Promise<boolean> {
  for (;;) {
    const answer = (await answerTo(terminal, prompt)).trim().toLowerCase();
    if (answer === "" || answer === "n" || answer === "no") return false;
    if (answer === "y" || answer === "yes") return true;
    process.stdout.write("Answer y for yes or n for no.\n");
  }
}

/** Rejects where the reader stops it, whatever the version of Node makes of that. */
function answerTo(terminal: Interface, prompt: string): Promise<string> {
  return new Promise((resolve, reject) => {
    const stopped = () => {
      process.stdout.write("\n");
      reject(new Failure("stopped before the questions were answered: nothing was made"));
    };
    terminal.once("close", stopped);
    terminal.question(prompt).then(
      (answer) => {
        terminal.off("close", stopped);
        resolve(answer);
      },
      () => terminal.close(),
    );
  });
}

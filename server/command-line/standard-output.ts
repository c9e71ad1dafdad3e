/** What the program writes to the stream or file that its output is led to. */
import { fstatSync, writeFileSync } from "node:fs";

const STANDARD_OUTPUT = 1;

/** Node gives a file its text in one go and does not ask how much was taken: on a full disk the rest would be lost unsaid. */
export function standardOutput(): (text: string) => void {
  if (process.stdout.isTTY !== true && fstatSync(STANDARD_OUTPUT).isFile())
    return (text) => writeFileSync(STANDARD_OUTPUT, text);
  return (text) => void process.stdout.write(text);
}

/** What is to be said of an error that came as output was written, such as that the disk is full. */
export function outputFault(error: unknown): string | undefined {
  const { syscall, message } = (error ?? {}) as NodeJS.ErrnoException;
  return syscall === "write" ? `the output cannot be written: ${message}` : undefined;
}

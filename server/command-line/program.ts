/** The `cotter` program: what it is called with in its process, and how that ends. */
import { run } from "./run.ts";
import { outputFault, standardOutput } from "./standard-output.ts";

// A reader that closes the pipe early (`| head`) is no failure of the command.
process.stdout.on("error", (error: NodeJS.ErrnoException) => {
  if (error.code === "EPIPE") process.exit(0);
  end(error);
  process.exit(2);
});

run(process.argv.slice(2), {
  folder: process.cwd(),
  write: standardOutput(),
  complain: (text) => void process.stderr.write(text),
  colour: !process.env.NO_COLOR && process.stdout.isTTY === true,
  width: process.stdout.columns ?? 100,
}).then((status) => {
  process.exitCode = status;
}, end);

function end(error: unknown): void {
  const stack = error instanceof Error ? error.stack : String(error);
  process.stderr.write(`cotter: ${outputFault(error) ?? `an error of the program itself: ${stack}`}\n`);
  process.exitCode = 2;
}

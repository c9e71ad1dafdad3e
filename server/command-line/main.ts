/** The `cotter` program: what it is called with in its process, and how that ends. */
import { run } from "./run.ts";

// A reader that closes the pipe early (`| head`) is no failure of the command.
process.stdout.on("error", (error: NodeJS.ErrnoException) => {
  if (error.code === "EPIPE") process.exit(0);
  throw error;
});

run(process.argv.slice(2), {
  folder: process.cwd(),
  write: (text) => void process.stdout.write(text),
  complain: (text) => void process.stderr.write(text),
  colour: !process.env.NO_COLOR && process.stdout.isTTY === true,
  width: process.stdout.columns ?? 100,
}).then(
  (status) => {
    process.exitCode = status;
  },
  (error: unknown) => {
    process.stderr.write(
      `cotter: an error of the program itself: ${error instanceof Error ? error.stack : String(error)}\n`,
    );
    process.exitCode = 2;
  },
);

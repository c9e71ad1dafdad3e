/** What `cotter start` asks on a terminal: on a real one, which python3 makes, since Node alone cannot. */
import { spawnSync } from "node:child_process";
import { mkdtempSync, readdirSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";
import { bundleOf } from "../language-server/session/bundle.ts";

const driver = fileURLToPath(new URL("terminal.py", import.meta.url));
const [ENTER, CONTROL_C, CONTROL_D] = ["\r", "\u0003", "\u0004"];

/** `cotter start kestrel` with answers typed; `made` is what is there afterwards. */
async function started(answers: readonly string[], programs = process.env.PATH) {
  const folder = mkdtempSync(path.join(tmpdir(), "cotter-terminal-"));
  const program = ["/usr/bin/env", `PATH=${programs}`, "NO_COLOR=1", "TERM=xterm", process.execPath];
  const words = [...program, await bundleOf("cotter"), "start", "kestrel"];
  const { error, stdout, stderr } = spawnSync(
    "python3",
    [driver, JSON.stringify(answers), folder, ...words],
    {
      encoding: "utf8",
      // Of a question that is not answered there is no end.
      timeout: 30_000,
    },
  );
  if (error !== undefined || stdout === "")
    throw new Error(`python3, which makes the terminal: ${error?.message ?? stderr}`);
  const { status, said } = JSON.parse(stdout) as { status: number; said: string };
  const made = readdirSync(folder, { recursive: true, encoding: "utf8" });
  return { status, said, has: (file: string) => made.includes(file), made };
}

const GIT = "Keep a record in git of what was written when? [y/N] ";
const HOOK = "Check the build before each commit? [y/N] ";

describe("cotter start on a terminal", () => {
  it("asks about git, and about the check if git is wanted", async () => {
    const { status, said, has } = await started([`y${ENTER}`, `yes${ENTER}`]);
    expect(status).toBe(0);
    expect(said).toContain(`${GIT}y\n`);
    expect(said).toContain(`${HOOK}yes\n`);
    expect(said).toContain("In kestrel: build.cotter, .gitattributes, .git/hooks/pre-commit\n");
    expect(has("kestrel/.git/hooks/pre-commit")).toBe(true);
  });

  it("takes an empty line for no, and then asks no more", async () => {
    const { status, said, made } = await started([ENTER]);
    expect(status).toBe(0);
    expect(said).toContain(`${GIT}\n`);
    expect(said).not.toContain(HOOK);
    expect(made).toEqual(["kestrel", "kestrel/build.cotter"]);
  });

  it("asks again where it cannot tell what was meant", async () => {
    const { status, said, has } = await started([`sure${ENTER}`, `Y${ENTER}`, `n${ENTER}`]);
    expect(status).toBe(0);
    expect(said).toContain(`${GIT}sure\nAnswer y for yes or n for no.\n${GIT}Y\n`);
    expect([has("kestrel/.gitattributes"), has("kestrel/.git/hooks/pre-commit")]).toEqual([true, false]);
  });

  it.each([
    ["at the first question", [CONTROL_C]],
    ["at the second", [`y${ENTER}`, CONTROL_C]],
    ["by the end of what is typed", [CONTROL_D]],
  ])("makes nothing when it is stopped %s, and says so", async (_, answers) => {
    const { status, said, made } = await started(answers);
    expect(status).toBe(2);
    expect(said).toMatch(/\ncotter: stopped before the questions were answered: nothing was made\n$/);
    expect(made).toEqual([]);
  });

  it("does not ask about git where there is none", async () => {
    const { status, said, made } = await started([], mkdtempSync(path.join(tmpdir(), "cotter-no-git-")));
    expect(status).toBe(0);
    expect(said).not.toContain("[y/N]");
    expect(said).toContain("git is not on this machine");
    expect(made).toEqual(["kestrel", "kestrel/build.cotter"]);
  });
});

/** Every word that the editor shows of the extension is there in English and in German, and none that is shown no more. */
import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";

const root = new URL("../../", import.meta.url);
const read = (file: string) => readFileSync(new URL(file, root), "utf8");
const words = (file: string): Record<string, string> => JSON.parse(read(file));

/** What the manifest asks for as `%key%`. */
function keysOfManifest(): readonly string[] {
  return [...new Set([...read("package.json").matchAll(/"%([^"%]+)%"/g)].map(([, key = ""]) => key))];
}

/** What the client says: the first argument of `l10n.t`, which has to be a literal to be found. */
function saidByClient(): readonly string[] {
  const files = readdirSync(new URL("client", root), { recursive: true, encoding: "utf8" });
  const texts = files.filter((file) => file.endsWith(".ts")).map((file) => read(`client/${file}`));
  const calls = texts.flatMap((text) => [...text.matchAll(/\bl10n\.t\(\s*("(?:[^"\\\n]|\\.)*"|[^\s])/g)]);
  return [...new Set(calls.map(([, literal = ""]) => JSON.parse(literal) as string))];
}

const placeholders = (text: string) => [...text.matchAll(/\{\d\}/g)].map(([mark]) => mark).sort();
const links = (text: string) => [...text.matchAll(/\]\(([^)]*)\)/g)].map(([, target]) => target);

describe("the words of the manifest", () => {
  const english = words("package.nls.json");
  const german = words("package.nls.de.json");

  test("are all there, and no others", () => {
    expect(Object.keys(english).sort()).toEqual([...keysOfManifest()].sort());
  });

  test("are there in German", () => {
    expect(Object.keys(german)).toEqual(Object.keys(english));
    expect(Object.entries(german).filter(([, text]) => text.trim() === "")).toEqual([]);
  });

  test("lead to the same commands in both", () => {
    const targets = (of: Record<string, string>) => Object.values(of).map(links);
    expect(targets(german)).toEqual(targets(english));
    const commands: readonly string[] = JSON.parse(read("package.json")).contributes.commands.map(
      ({ command }: { command: string }) => `command:${command}`,
    );
    const led = targets(english).flat();
    expect(led.length).toBeGreaterThan(5);
    expect(led.filter((target) => !commands.includes(target ?? ""))).toEqual([
      "command:cotter.stillOpen.focus",
    ]);
  });
});

describe("the words of the client", () => {
  const english = words("l10n/bundle.l10n.json");
  const german = words("l10n/bundle.l10n.de.json");

  test("are all there, and no others", () => {
    expect(Object.keys(english)).toEqual([...saidByClient()].sort());
    expect(Object.entries(english).filter(([key, text]) => key !== text)).toEqual([]);
  });

  test("are there in German, with what is filled in", () => {
    expect(Object.keys(german)).toEqual(Object.keys(english));
    const differing = Object.entries(german).filter(
      ([key, text]) => text.trim() === "" || placeholders(text).join() !== placeholders(key).join(),
    );
    expect(differing).toEqual([]);
  });
});

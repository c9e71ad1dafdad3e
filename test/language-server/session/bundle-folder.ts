/** The folder of the bundles of one run, which outlasts the threads that its files are tested in. */
import { chmod, mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import path from "node:path";
import type { TestProject } from "vitest/node";

declare module "vitest" {
  interface ProvidedContext {
    readonly bundleFolder: string;
  }
}

/** Called once, before all tests; what it answers is called after them. */
export async function setup({ provide }: TestProject): Promise<() => Promise<void>> {
  const folder = await mkdtemp(path.join(tmpdir(), "cotter-bundles-"));
  // Some tests start a bundle as someone without rights.
  await chmod(folder, 0o755);
  provide("bundleFolder", folder);
  return () => rm(folder, { recursive: true });
}

/** The extension in a browser: the same server in a worker, which reads its files through the editor. */
import type { ExtensionContext } from "vscode";
import type { AtWork } from "./first.ts";
import { beginWith } from "./first.ts";

let atWork: Promise<AtWork> | undefined;

export function activate(context: ExtensionContext): void {
  atWork = beginWith(context, async () => (await import("./browser-client.ts")).startClient(context));
}

export async function deactivate(): Promise<void> {
  const working = await atWork?.catch(() => undefined);
  await working?.stop();
}

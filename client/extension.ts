/** The extension: starts the language server when there is a build log, and stops it at the end. */
import type { ExtensionContext } from "vscode";
import type { AtWork } from "./first.ts";
import { beginWith } from "./first.ts";
import { offerCheckTask } from "./tasks/check-task.ts";

let atWork: Promise<AtWork> | undefined;

export function activate(context: ExtensionContext): void {
  atWork = beginWith(context, async () => (await import("./node-client.ts")).startClient(context));
  context.subscriptions.push(offerCheckTask(context.extensionUri));
}

export async function deactivate(): Promise<void> {
  const working = await atWork?.catch(() => undefined);
  await working?.stop();
}

/** *Restart the server*, also while it is on its way up. */
import type { BaseLanguageClient } from "vscode-languageclient";
import { State } from "vscode-languageclient";

const underWay = new WeakMap<BaseLanguageClient, Promise<void>>();

/** Asked for again meanwhile, it is done once. */
export function restartServer(client: BaseLanguageClient): Promise<void> {
  const restarting = underWay.get(client) ?? restart(client).finally(() => underWay.delete(client));
  underWay.set(client, restarting);
  return restarting;
}

async function restart(client: BaseLanguageClient): Promise<void> {
  // What is on its way up cannot be stopped: this waits for it.
  if (client.state === State.Starting) await client.start();
  if (client.needsStop()) await client.stop();
  await client.start();
}

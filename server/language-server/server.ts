/** The language server, whatever it runs in: from the first message of a client to the last. */
import type { Connection, InitializeResult } from "vscode-languageserver";
import { DidChangeConfigurationNotification } from "vscode-languageserver";
import { tellOfChanges } from "./build-changed.ts";
import { serverCapabilities } from "./capabilities.ts";
import { Diagnostics } from "./diagnostics.ts";
import { hearOfFileOperations, hearOfFiles, watchFiles } from "./files.ts";
import { foldersOf, hearOfFolders, readFolders } from "./folders.ts";
import type { Host } from "./host.ts";
import type { ClientNotifications } from "./protocol.ts";
import { refreshOthers } from "./refreshing.ts";
import { answerChanging } from "./requests/changing.ts";
import { answerOfNames } from "./requests/names.ts";
import { answerOfRecord } from "./requests/record.ts";
import { answerOfStructure } from "./requests/structure.ts";
import { answerTelling } from "./requests/telling.ts";
import { answerOfViews } from "./requests/views.ts";
import { Session } from "./session.ts";
import { readSettings, readStartOptions } from "./settings.ts";

export interface ServerName {
  readonly name: string;
  readonly version?: string;
}

/** Serves one client, until the connection ends. */
export function serve(connection: Connection, host: Host, serverInfo: ServerName): void {
  connection.onInitialize((params): InitializeResult => {
    const options = readStartOptions(params.initializationOptions);
    const session = new Session(connection, host, params.capabilities, options);
    answerRequests(session);
    connection.onInitialized(() => {
      begin(session, foldersOf(params)).catch((error: unknown) => session.report(error));
    });
    return { capabilities: serverCapabilities(params.capabilities), serverInfo };
  });
  connection.listen();
}

function answerRequests(session: Session): void {
  const { connection } = session;
  const diagnostics = new Diagnostics(session);
  refreshOthers(session);
  hearOfFiles(session);
  hearOfFileOperations(session);
  answerOfNames(session);
  answerOfStructure(session);
  answerTelling(session);
  answerChanging(session);
  answerOfViews(session);
  answerOfRecord(session);
  hearOfTrust(session);
  tellOfChanges(session);
  connection.languages.diagnostics.on(({ textDocument: { uri }, previousResultId }, token) =>
    session.answer(uri, token, { kind: "full", items: [] }, () => diagnostics.ofFile(uri, previousResultId)),
  );
  connection.languages.diagnostics.onWorkspace(({ previousResultIds }, token) =>
    session.answerOfAll(token, { items: [] }, () => diagnostics.ofWorkspace(previousResultIds)),
  );
}

function hearOfTrust({ connection, records }: Session): void {
  const method: keyof ClientNotifications = "cotter/trusted";
  connection.onNotification(method, ({ trusted }: ClientNotifications[typeof method]) => {
    records.trusted = trusted === true;
  });
}

async function begin(session: Session, folders: readonly string[]): Promise<void> {
  hearOfFolders(session);
  await Promise.all([hearOfSettings(session), watchFiles(session), readFolders(session, folders)]);
}

/** Asks for the settings where the client can be asked, and listens for changes of them. */
async function hearOfSettings(session: Session): Promise<void> {
  const { connection, client } = session;
  const ask = async () => {
    const section: unknown = await connection.workspace.getConfiguration("cotter");
    session.useSettings(readSettings(section));
  };
  const canAsk = client.workspace?.configuration === true;
  connection.onDidChangeConfiguration(({ settings }) => {
    if (canAsk) ask().catch((error: unknown) => session.report(error));
    else session.useSettings(readSettings((settings as { cotter?: unknown } | null)?.cotter));
  });
  if (canAsk) await ask();
  if (client.workspace?.didChangeConfiguration?.dynamicRegistration === true)
    await connection.client.register(DidChangeConfigurationNotification.type, { section: "cotter" });
}

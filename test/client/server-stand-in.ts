/** The client library with a server that is there, and ends, when the test says so: in the place of `vscode-languageclient`. */
import { EventEmitter } from "./editor-stand-in.ts";

export const State = { Stopped: 1, Running: 2, Starting: 3, StartFailed: 4 } as const;
type State = (typeof State)[keyof typeof State];

export class Client {
  readonly deeds: string[] = [];
  readonly asked: unknown[] = [];
  readonly outputChannel = { appendLine: () => undefined };
  readonly code2ProtocolConverter = { asUri: String };
  private readonly changes = new EventEmitter<{ readonly newState: State }>();
  readonly onDidChangeState = this.changes.event;
  state: State = State.Stopped;

  /** The server is on its way up, is there, or has ended. */
  becomes(state: State): void {
    this.state = state;
    this.changes.fire({ newState: state });
  }
  isRunning(): boolean {
    return this.state === State.Running;
  }
  needsStop(): boolean {
    return this.state !== State.Stopped;
  }
  onNotification() {
    return { dispose: () => undefined };
  }
  sendRequest(method: string, params: unknown): Promise<unknown> {
    this.asked.push([method, params]);
    return Promise.resolve({ name: "The Sprint", today: "2026-05-16", next: null, toOrder: 0 });
  }
  /** As the library: one that is on its way up is waited for. */
  async start(): Promise<void> {
    this.deeds.push("start");
    while (this.state === State.Starting)
      await new Promise<void>((resolve) => this.onDidChangeState(() => resolve()));
    this.becomes(State.Running);
  }
  stop(): Promise<void> {
    if (!this.isRunning()) return Promise.reject(new Error("Client is not running and can't be stopped"));
    this.deeds.push("stop");
    this.becomes(State.Stopped);
    return Promise.resolve();
  }
}

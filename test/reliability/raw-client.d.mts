export class RawClient {
  readonly faults: readonly string[];
  constructor(options?: { readonly env?: NodeJS.ProcessEnv });
  start(folderUri: string): Promise<unknown>;
  ask(method: string, params: unknown): Promise<unknown>;
  tell(method: string, params: unknown): void;
  stop(): Promise<number | null>;
}

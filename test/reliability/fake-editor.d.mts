export class FakeEditor {
  readonly counts: { readonly edits: number; readonly comparisons: number; readonly malformed: number };
  readonly faults: readonly string[];
  constructor(options: { readonly seed: number; readonly sample: string });
  work(options: { readonly edits: number; readonly compareEvery: number }): Promise<void>;
}

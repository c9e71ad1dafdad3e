interface Mutant {
  readonly fileName: string;
  readonly location: {
    readonly start: { readonly line: number; readonly column: number };
    readonly end: { readonly line: number; readonly column: number };
  };
  readonly mutatorName: string;
  readonly replacement: string;
}

export function isDrawn(
  draw: {
    readonly seed: number;
    readonly from: number;
    readonly to: number;
    readonly named?: readonly string[];
  },
  mutant: Mutant,
): boolean;

export function nameOf(mutant: Mutant): string;

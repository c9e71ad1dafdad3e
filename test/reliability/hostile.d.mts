export const COMMANDS: readonly string[];
export const FORMS: readonly string[];
export function callAll(
  commands: readonly string[],
  forms: readonly string[],
): { readonly called: readonly string[]; readonly faults: readonly string[] };
export const HARM: { readonly markdown: (text: string) => readonly string[] };

export const ALLOWED: readonly string[];
export function bundled(): readonly {
  readonly name: string;
  readonly version: string;
  readonly licence: string;
}[];
export function billOfMaterials(): {
  readonly components: readonly { readonly purl: string; readonly hashes?: readonly unknown[] }[];
};

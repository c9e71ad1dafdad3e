/** The later of two facts; the one that there is, where there is only one. */
export function later<Fact extends { readonly order: number }>(
  one: Fact | undefined,
  other: Fact | undefined,
): Fact | undefined {
  if (one === undefined || other === undefined) return one ?? other;
  return other.order > one.order ? other : one;
}

/** Whether two values of the protocol say the same: told without writing either of them out. */
export function areAlike(one: unknown, other: unknown): boolean {
  if (one === other) return true;
  if (typeof one !== "object" || typeof other !== "object" || one === null || other === null) return false;
  if (Array.isArray(one) || Array.isArray(other))
    return Array.isArray(one) && Array.isArray(other) && areAlikeInOrder(one, other);
  const keys = Object.keys(one);
  return (
    keys.length === Object.keys(other).length &&
    keys.every((key) => areAlike(one[key as keyof typeof one], other[key as keyof typeof other]))
  );
}

function areAlikeInOrder(one: readonly unknown[], other: readonly unknown[]): boolean {
  if (one.length !== other.length) return false;
  // Mostly the same objects.
  for (let index = 0; index < one.length; index++)
    if (one[index] !== other[index] && !areAlike(one[index], other[index])) return false;
  return true;
}

/** Puts an item at the end of the list under a key, which it begins where there is none. */
export function listUnder<Key, Item>(lists: Map<Key, Item[]>, key: Key, item: Item): void {
  const known = lists.get(key);
  if (known === undefined) lists.set(key, [item]);
  else known.push(item);
}

/** Puts an item at the end of the list under a key, which it begins where there is none. */
export function listUnder<Key, Item>(lists: Map<Key, Item[]>, key: Key, item: Item): void {
  const known = lists.get(key);
  if (known === undefined) lists.set(key, [item]);
  else known.push(item);
}

/** The items of all lists in one: several times as quick as `flat`, which counts with lists of long lists. */
export function inOneList<Item>(lists: readonly (readonly Item[])[]): Item[] {
  const all: Item[] = [];
  for (const list of lists) if (list.length > 0) for (const item of list) all.push(item);
  return all;
}

/**
 * A list as it is kept: the engine leaves room for more behind lists that were filled one by one, of which a build keeps
 * tens of thousands, and empty ones are all the same.
 */
export function asKept<Item>(list: readonly Item[]): readonly Item[] {
  return list.length === 0 ? NOTHING : list.slice();
}

const NOTHING: readonly never[] = [];

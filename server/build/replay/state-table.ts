/** A state while the diary is being read; outside the replay it is only read. */
export type Growing<T> = { -readonly [K in keyof T]: T[K] };

/**
 * Values by what they are of, each only ever replaced as a whole. A table is shared with the moments that are kept of a
 * diary: it knows what has been put in since the last of them, so that a copy costs no more than that, and two tables
 * that go on from one moment are compared by what each has put in since.
 */
export class SharedTable<Key, Value> implements ReadonlyMap<Key, Value> {
  /** What was there at a moment that others go on from too: nothing of it ever changes. */
  private base: ReadonlyMap<Key, Value> = new Map();
  /** What has been put in since. */
  protected since = new Map<Key, Value>();
  /** How many of its keys the base does not have. */
  private added = 0;

  get(key: Key): Value | undefined {
    return this.since.get(key) ?? this.base.get(key);
  }

  has(key: Key): boolean {
    return this.since.has(key) || this.base.has(key);
  }

  set(key: Key, value: Value): this {
    if (!this.has(key)) this.added++;
    this.since.set(key, value);
    return this;
  }

  get size(): number {
    return this.base.size + this.added;
  }

  /** In the order in which the keys came. */
  *keys(): MapIterator<Key> {
    yield* this.base.keys();
    for (const key of this.since.keys()) if (!this.base.has(key)) yield key;
  }

  *values(): MapIterator<Value> {
    const { base, since } = this;
    for (const [key, value] of base) yield since.get(key) ?? value;
    for (const [key, value] of since) if (!base.has(key)) yield value;
  }

  *entries(): MapIterator<[Key, Value]> {
    const { base, since } = this;
    for (const [key, value] of base) yield [key, since.get(key) ?? value];
    for (const [key, value] of since) if (!base.has(key)) yield [key, value];
  }

  [Symbol.iterator](): MapIterator<[Key, Value]> {
    return this.entries();
  }

  forEach(each: (value: Value, key: Key, table: ReadonlyMap<Key, Value>) => void): void {
    for (const [key, value] of this) each(value, key, this);
  }

  /** The same values, to be gone on with by themselves. From now on they are shared. */
  copy(): this {
    // So much has been put in that it is cheaper for all copies to begin from it.
    if (this.since.size * SHARE > this.base.size) {
      this.base = new Map(this.entries());
      this.since = new Map();
      this.added = 0;
    }
    const copy = new (this.constructor as new () => this)();
    copy.base = this.base;
    copy.since = new Map(this.since);
    copy.added = this.added;
    return copy;
  }

  /**
   * Puts the values of another table in the place of those that say the same. Where all is the same, in the same order,
   * the other table can stand for this one.
   *
   * @param same the old value where the new one says the same, else the new one
   * @param moments tables that this one came by or goes on from: what they have in common stays so
   * @returns the keys under which the two differ, and which table to go on with
   */
  takeOver(
    before: this,
    same: (value: Value, known: Value) => Value,
    moments: readonly this[],
  ): TakenOver<Key, this> {
    const isAkin = this.base === before.base;
    const keys = isAkin ? [...this.since.keys(), ...before.since.keys()] : [...this.keys(), ...before.keys()];
    const differing = new Set<Key>();
    for (const key of keys) {
      const [value, known] = [this.known(key), before.known(key)];
      if (value === known) continue;
      const one = value === undefined || known === undefined ? value : same(value, known);
      if (one !== undefined && one !== value) {
        this.since.set(key, one);
        for (const moment of moments) if (moment.known(key) === value) moment.since.set(key, one);
      }
      if (one !== known) differing.add(key);
    }
    if (differing.size > 0 || !this.hasOrderOf(before)) return { differing: [...differing], table: this };
    // It goes on from the newer moment, so that it is akin to those that come.
    before.base = this.base;
    before.since = this.since;
    before.added = this.added;
    return { differing: [], table: before };
  }

  /** Whether the keys of another table came in the same order; both have the same keys. */
  private hasOrderOf(before: this): boolean {
    const isAkin = this.base === before.base;
    const others = isAkin ? before.addedKeys() : before.keys();
    for (const key of isAkin ? this.addedKeys() : this.keys()) if (others.next().value !== key) return false;
    return true;
  }

  private *addedKeys(): MapIterator<Key> {
    for (const key of this.since.keys()) if (!this.base.has(key)) yield key;
  }

  private known(key: Key): Value | undefined {
    return this.since.get(key) ?? this.base.get(key);
  }
}

export interface TakenOver<Key, Table> {
  readonly differing: readonly Key[];
  readonly table: Table;
}

/** A base is made anew for its copies once one in so many of its values has changed. */
const SHARE = 64;

/**
 * States by what they are of. They grow while the diary is read: one that is shared with a moment is copied when it is
 * first asked for behind it, so that what nobody touches stays the same object. What a state holds is only ever replaced.
 */
export class StateTable<Key, State extends object> extends SharedTable<Key, State> {
  /** The states that are this table's alone. */
  private readonly own = new Set<Key>();
  private isFinal = false;

  override copy(): this {
    this.own.clear();
    return super.copy();
  }

  /** The diary has been read: nothing grows any more. */
  finish(): void {
    this.isFinal = true;
  }

  /** The state of a thing, to be changed as long as the diary is being read. */
  override get(key: Key): Growing<State> | undefined {
    const state = super.get(key);
    if (state === undefined || this.isFinal || this.own.has(key)) return state;
    const copy = { ...state };
    this.set(key, copy);
    return copy;
  }

  override set(key: Key, state: State): this {
    this.own.add(key);
    return super.set(key, state);
  }

  /** All states, to be changed. */
  *growing(): Generator<Growing<State>> {
    for (const key of this.keys()) yield this.get(key) as Growing<State>;
  }
}

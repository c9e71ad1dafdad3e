/** A state while the diary is being read; outside the replay it is only read. */
export type Growing<T> = { -readonly [K in keyof T]: T[K] };

/**
 * States by what they are of. They grow while the diary is read, and are shared with the moments that are kept of it: one
 * is copied when it is first asked for behind such a moment, so that what nobody touches stays the same object. What a
 * state holds is only ever replaced.
 */
export class StateTable<Key, State extends object> extends Map<Key, Growing<State>> {
  /** The states that are this table's alone. */
  private readonly own = new Set<Key>();
  private isFinal = false;

  /** The same states, to be gone on with by themselves. From now on they are shared. */
  copy(): StateTable<Key, State> {
    const copy = new StateTable<Key, State>();
    for (const [key, state] of super.entries()) copy.share(key, state);
    this.own.clear();
    return copy;
  }

  /** The diary has been read: nothing grows any more. */
  finish(): void {
    this.isFinal = true;
  }

  /** Puts a state in that others have, too. */
  private share(key: Key, state: Growing<State>): void {
    super.set(key, state);
  }

  override get(key: Key): Growing<State> | undefined {
    const state = super.get(key);
    if (state === undefined || this.isFinal || this.own.has(key)) return state;
    const copy = { ...state };
    this.set(key, copy);
    return copy;
  }

  override set(key: Key, state: Growing<State>): this {
    this.own.add(key);
    return super.set(key, state);
  }

  override values(): MapIterator<Growing<State>> {
    return this.isFinal ? super.values() : this.growing();
  }

  private *growing(): MapIterator<Growing<State>> {
    for (const key of super.keys()) yield this.get(key) as Growing<State>;
  }
}

/** What comes before what, in an order of work, and the circles in it. */

/** Something that waits for others; an id that is not among them is taken as met. Ids are unique. */
export interface Linked {
  readonly id: string;
  readonly after: readonly string[];
}

/** Activities that wait for each other, in order of work: the first waits for the last, and that one link is left out. */
export interface Circle {
  readonly ids: readonly string[];
  readonly leftOut: { readonly id: string; readonly after: string };
}

export interface Precedence<T extends Linked> {
  /** Each behind all that it waits for. */
  readonly order: readonly T[];
  /** Directly before it, and directly behind it, in order of definition. */
  readonly before: (id: string) => readonly T[];
  readonly behind: (id: string) => readonly T[];
  readonly circles: readonly Circle[];
}

/**
 * Sorts out precedence. A circle costs one link and not the plan: the link that leads back to where the circle was
 * entered, coming from the work that waits for nothing, or else from the first that is defined.
 */
export function precedence<T extends Linked>(activities: readonly T[]): Precedence<T> {
  const behind = new Map<string, T[]>(activities.map(({ id }) => [id, []]));
  for (const activity of activities) {
    for (const id of new Set(activity.after)) behind.get(id)?.push(activity);
  }
  const { order, circles } = walk(activities, behind);
  for (const { leftOut } of circles) {
    const ones = behind.get(leftOut.after) ?? [];
    behind.set(
      leftOut.after,
      ones.filter(({ id }) => id !== leftOut.id),
    );
  }
  const before = new Map<string, T[]>(activities.map(({ id }) => [id, []]));
  for (const activity of activities) {
    for (const { id } of behind.get(activity.id) ?? []) before.get(id)?.push(activity);
  }
  return { order, circles, before: (id) => before.get(id) ?? [], behind: (id) => behind.get(id) ?? [] };
}

/** Depth first along the links, without recursion: a chain may be as long as it likes. */
function walk<T extends Linked>(
  activities: readonly T[],
  behind: ReadonlyMap<string, readonly T[]>,
): { order: readonly T[]; circles: readonly Circle[] } {
  const finished: T[] = [];
  const circles: Circle[] = [];
  const visited = new Set<string>();
  const path: { readonly activity: T; readonly onward: T[] }[] = [];
  const placeOnPath = new Map<string, number>();

  function enter(activity: T): void {
    visited.add(activity.id);
    placeOnPath.set(activity.id, path.length);
    path.push({ activity, onward: [...(behind.get(activity.id) ?? [])] });
  }

  function leave(): void {
    const left = path.pop();
    if (left === undefined) return;
    placeOnPath.delete(left.activity.id);
    finished.push(left.activity);
  }

  function meet(activity: T): void {
    const place = placeOnPath.get(activity.id);
    if (place === undefined) {
      if (!visited.has(activity.id)) enter(activity);
      return;
    }
    const ids = path.slice(place).map((step) => step.activity.id);
    circles.push({ ids, leftOut: { id: activity.id, after: ids.at(-1) ?? activity.id } });
  }

  // What is finished last goes first, so the last defined is visited first.
  const waitForNothing = activities.filter(({ after }) => !after.some((id) => behind.has(id))).reverse();
  for (const root of [...waitForNothing, ...activities]) {
    if (visited.has(root.id)) continue;
    enter(root);
    for (let top = path.at(-1); top !== undefined; top = path.at(-1)) {
      const next = top.onward.pop();
      if (next === undefined) leave();
      else meet(next);
    }
  }
  return { order: finished.reverse(), circles };
}

// What chevrotain uses of lodash, for what it uses it for: lists, plain objects, and functions as what is done with each.
// The language has most of this by now. `test/bundling/parser-library.test.ts` compares each with the original.

const isList = Array.isArray;
const entries = (of) =>
  isList(of)
    ? of.map((value, index) => [value, index])
    : Object.entries(of ?? {}).map(([key, value]) => [value, key]);

export const assign = Object.assign;
export const isArray = isList;
export const keys = (of) => Object.keys(of ?? {});
export const values = (of) => Object.values(of ?? {});
export const has = (of, key) => of != null && Object.hasOwn(of, key);
export const noop = () => undefined;
export const identity = (value) => value;

export const isFunction = (value) => typeof value === "function";
export const isObject = (value) =>
  value !== null && (typeof value === "object" || typeof value === "function");
export const isRegExp = (value) => value instanceof RegExp;
export const isString = (value) => typeof value === "string";
export const isUndefined = (value) => value === undefined;
export const isEmpty = (of) => of == null || Object.keys(of).length === 0;

/** Ends where `each` answers false. */
export function forEach(of, each) {
  for (const [value, key] of entries(of)) if (each(value, key, of) === false) break;
  return of;
}
export const map = (of, each) => entries(of).map(([value, key]) => each(value, key, of));
export const flatMap = (of, each) => map(of, each).flat();
export const every = (of, holds) => entries(of).every(([value, key]) => holds(value, key, of));
export const some = (of, holds) => entries(of).some(([value, key]) => holds(value, key, of));
export const find = (of, holds) => entries(of).find(([value, key]) => holds(value, key, of))?.[0];
export const filter = (of, holds) => values(of).filter((value) => holds(value));
export const reject = (of, holds) => values(of).filter((value) => !holds(value));
export const reduce = (of, step, start) =>
  entries(of).reduce((all, [value, key]) => step(all, value, key, of), start);
export const includes = (of, value) => (isString(of) ? of : values(of)).includes(value);

export const first = (list) => list?.[0];
export const last = (list) => list?.at(-1);
export const drop = (list, count = 1) => list.slice(count);
export const dropRight = (list, count = 1) => list.slice(0, Math.max(0, list.length - count));
export const flatten = (list) => list.flat();
export const compact = (list) => list.filter(Boolean);
export const uniq = (list) => [...new Set(list)];
export const difference = (list, without) => list.filter((value) => !without.includes(value));
export const indexOf = (list, value) => list.indexOf(value);

export function clone(of) {
  if (isList(of)) return [...of];
  return isObject(of) ? Object.assign(Object.create(Object.getPrototypeOf(of)), of) : of;
}
export function defaults(of, ...others) {
  for (const other of others) for (const [key, value] of Object.entries(other ?? {})) of[key] ??= value;
  return of;
}
export const pickBy = (of, holds) =>
  Object.fromEntries(Object.entries(of).filter(([, value]) => holds(value)));
export function groupBy(list, keyOf) {
  const groups = {};
  for (const value of list) {
    const key = keyOf(value);
    groups[key] ??= [];
    groups[key].push(value);
  }
  return groups;
}
export const upperFirst = (text) => text.charAt(0).toUpperCase() + text.slice(1);

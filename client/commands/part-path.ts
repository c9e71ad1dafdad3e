/** The path of a thing of the tree, as the notation has it. */

const NAME = /^[A-Za-z][A-Za-z0-9_]*$/;

/** What keeps a text from being a path: the first name that is none; undefined where it is one. */
export function faultOfPath(text: string): string | undefined {
  return text.split(".").find((name) => !NAME.test(name));
}

/** `front.left.hub_carrier` to `Hub carrier`. */
export function titleFromPath(path: string): string {
  const words = path.slice(path.lastIndexOf(".") + 1).replaceAll("_", " ");
  return words.slice(0, 1).toUpperCase() + words.slice(1);
}

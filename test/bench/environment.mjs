// The environment that measured programs are started in.

/**
 * That of this process, without what is set for Node itself: certificates of one machine that are read at every start, ours and
 * the bare one, would make ours look cheap beside it.
 *
 * @param more variables beside
 */
export function plainEnvironment(more = {}) {
  const plain = Object.entries(process.env).filter(([name]) => !name.startsWith("NODE_"));
  return { ...Object.fromEntries(plain), ...more };
}

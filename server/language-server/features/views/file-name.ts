/** A name for a file that is made of a build: `pell-otter-1961-order-2026-11-24.html`. */
export function fileName(name: string, what: string, today: string): string {
  const plain = name
    .normalize("NFKD")
    .replace(/\p{M}/gu, "")
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, "-")
    .slice(0, 60)
    .replace(/^-|-$/g, "");
  return `${[plain, what, today].filter((part) => part !== "").join("-")}.html`;
}

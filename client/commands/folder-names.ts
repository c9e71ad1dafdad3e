/** Names for the folder of a vehicle, to try one after the other: `pell-otter-1961`, `pell-otter-1961-2`, … */
export function* folderNames(vehicle: string): Generator<string> {
  const plain = vehicle
    .normalize("NFKD")
    .replace(/\p{M}/gu, "")
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, "-")
    .slice(0, 60)
    .replace(/^-|-$/g, "");
  const name = plain === "" ? "vehicle" : plain;
  yield name;
  for (let count = 2; ; count += 1) yield `${name}-${count}`;
}

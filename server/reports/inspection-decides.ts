/** What stands under every list of open items and every release: the log is not the vehicle. */
export function inspectionDecides(open: number): string {
  const shown = open === 0 ? "nothing" : open === 1 ? "1 item" : `${open} items`;
  return `The log shows ${shown} open; it does not prove the vehicle safe; inspection decides.`;
}

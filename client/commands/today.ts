/** Today's date in the time zone of the machine, as the notation writes it. */
export function today(now = new Date()): string {
  const two = (figure: number) => String(figure).padStart(2, "0");
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}

/** @param days at least one */
export function sayDaysLater(days: number): string {
  return days === 1 ? "the day after" : `${days} days later`;
}

// Figures of a series of measurements.

export function median(values) {
  return quantile(values, 0.5);
}

/** The value that 95 of 100 measurements do not exceed. */
export function p95(values) {
  return quantile(values, 0.95);
}

function quantile(values, share) {
  const ascending = values.filter((value) => value !== undefined).sort((a, b) => a - b);
  return ascending[Math.min(ascending.length - 1, Math.ceil(share * ascending.length) - 1)];
}

/** Milliseconds to three figures at the most. */
export function milliseconds(value) {
  if (value === undefined || Number.isNaN(value)) return "–";
  return `${inFigures(value)} ms`;
}

export function inFigures(value) {
  return value >= 100 ? value.toFixed(0) : value >= 10 ? value.toFixed(1) : value.toFixed(2);
}

/** Calls back in turn through all subjects, a whole round before the next one begins. */
export async function inTurn(rounds, subjects, measure) {
  for (let round = 0; round < rounds; round++) for (const subject of subjects) await measure(subject, round);
}

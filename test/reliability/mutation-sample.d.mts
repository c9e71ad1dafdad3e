export function wilson(killed: number, drawn: number): [lower: number, upper: number];

import { checkRows } from "./row-checks.ts";

// Intervals and date codes: the table is kept for its sources, and every row is listed as unchecked.
checkRows("16_safety_lifetimes", []);

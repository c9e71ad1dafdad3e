/**
 * Metric tyre sizes, by the rule of their designation (ISO 4000-1): section width in mm, ratio of height to width in percent,
 * rim in inches. A radial without a ratio in its name is of series 80 to 82.
 *
 * Limits: widths of 125 to 295 mm, ratios of 30 to 80, rims of 10 to 20 in. Not every size of the rule is made.
 */

const widths = range(125, 295, 10);
const ratios = range(80, 30, -5);
const rims = range(10, 20, 1);

/** `185/70R13`, `155R13` and so on, tall ones first as older vehicles wear them. */
export function tyreDesignations(): readonly string[] {
  return widths.flatMap((width) =>
    rims.flatMap((rim) => [
      ...ratios.map((ratio) => `${width}/${ratio}R${rim}`),
      ...(width <= 205 ? [`${width}R${rim}`] : []),
    ]),
  );
}

function range(from: number, to: number, step: number): readonly number[] {
  return Array.from({ length: Math.round((to - from) / step) + 1 }, (_, place) => from + place * step);
}

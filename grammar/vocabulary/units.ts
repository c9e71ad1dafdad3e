/**
 * The symbols of units that an expression may join: behind `9.5 mm/` stands a unit (`s`) or a name (`pitch`), and
 * only a list tells which. What each unit is worth is not the grammar's business.
 */

const WITHOUT_PREFIX =
  "in thou mil ft yd mile lb oz min h d week month year deg arcmin arcsec rad K degC degF kgf lbf ozf psi ksi inHg " +
  "hp PS cc imp_gal imp_pt imp_floz us_gal us_pt us_floz rpm mph turn click flat slot run link";

const WITH_PREFIX = "m g s N J Pa bar W l Hz A V ohm Ah";
const PREFIXES = ["", "µ", "u", "m", "k", "M", "G"];
/** Of length and volume only. */
const SMALL_PREFIXES = ["c", "d"];

/** Every symbol that can stand in a unit expression, with its prefixes. */
export const UNIT_SYMBOLS: ReadonlySet<string> = new Set([
  ...WITHOUT_PREFIX.split(" "),
  ...WITH_PREFIX.split(" ").flatMap((symbol) => PREFIXES.map((prefix) => prefix + symbol)),
  ...["m", "l"].flatMap((symbol) => SMALL_PREFIXES.map((prefix) => prefix + symbol)),
]);

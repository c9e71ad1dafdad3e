/** The closed lists of words that values are chosen from, and the words that no name can be. */

export const MATERIALS = [
  "steel",
  "cast_iron",
  "aluminium",
  "magnesium",
  "titanium",
  "brass",
  "bronze",
  "copper",
  "copper_nickel",
  "composite",
  "rubber",
  "plastic",
  "glass",
  "timber",
  "leather",
] as const;

export const CONDITIONS = [
  "good",
  "dirty",
  "worn",
  "scored",
  "pitted",
  "perished",
  "play",
  "bent",
  "cracked",
  "corroded",
  "seized",
  "leaking",
  "weeping",
  "loose",
  "stripped",
  "stretched",
  "chafed",
  "contaminated",
  "glazed",
  "missing",
  "wrong",
  "modified",
  "damaged",
  "out_of_date",
  "rounded",
  "bodged",
] as const;

export const DECISIONS = ["reuse", "recondition", "repair", "renew", "make", "modify", "scrap"] as const;

export const LOCKS = [
  "threadlocker",
  "self_locking",
  "locknut",
  "split_pin",
  "lockwire",
  "tab_washer",
  "lockplate",
  "staked",
  "none",
] as const;

export const FRICTION_WORDS = [
  "dry",
  "oiled",
  "zinc",
  "cadmium",
  "stainless",
  "moly",
  "threadlocker",
] as const;

export const AS_FOUND = ["on", "missing", "loose", "shelf"] as const;

/** Ways of cleaning and of inspecting. */
export const METHODS = [
  "hand",
  "solvent",
  "ultrasonic",
  "blasting",
  "eye",
  "penetrant",
  "magnetic_particle",
  "crack_test",
  "pressure",
] as const;

export const WEEKDAYS = ["mon", "tue", "wed", "thu", "fri", "sat", "sun"] as const;

/** What a hold point can ask for. */
export const HOLD_NEEDS = [
  "parts",
  "joints",
  "systems",
  "circuits",
  "limits",
  "settings",
  "lives",
  "tests",
  "snags",
  "jobs",
] as const;

/** Words of the notation that cannot be a name of one segment. */
export const RESERVED_NAMES = [
  "vehicle",
  "x",
  "in",
  "on",
  "of",
  "by",
  "to",
  "at",
  "as",
  "a",
  "for",
  "with",
  "from",
  "due",
  "cost",
  "credit",
  "ref",
  "like",
  "new",
  "min",
  "max",
  "then",
  "until",
  "batch",
  "order",
  "ran",
  "pass",
  "fail",
  "held",
  "moved",
  "each",
  "class",
  "grade",
  "LH",
] as const;

/**
 * Words that are never a unit although they stand behind a number. `in`, `min` and `m` are left out: behind a
 * number they are units.
 */
export const NEVER_UNITS: ReadonlySet<string> = new Set([
  ...RESERVED_NAMES.filter((word) => word !== "in" && word !== "min"),
  ..."height head thread running every after within clearance interference made expires nylon metal".split(
    " ",
  ),
]);

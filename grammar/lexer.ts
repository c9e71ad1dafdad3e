/**
 * A lexer of its own, because what a word means here depends on the token before it (behind a number, `min` is a
 * unit) and because a log is read at every start: a general lexer spends longer on analysing its patterns than on
 * reading a file. The token types are chevrotain's, whose parsers read what this yields.
 */
import type { IToken, TokenType } from "chevrotain";
import { isSpace } from "./white-space.ts";

/** How one kind of token reads. */
export interface LexerRule {
  readonly type: TokenType;
  /** The characters that it can start with. */
  readonly starts: string;
  /** The end of the token that starts at `at`, or `at` itself where there is none. */
  readonly endOf: (text: string, at: number, before: readonly IToken[]) => number;
  /** The type of the token by its text, where a word can be a keyword. */
  readonly typeOf?: (image: string) => TokenType;
}

/** A rule by a pattern, which has to be sticky. */
export function byPattern(type: TokenType, starts: string, pattern: RegExp): LexerRule {
  return {
    type,
    starts,
    endOf: (text, at) => {
      pattern.lastIndex = at;
      return pattern.test(text) ? pattern.lastIndex : at;
    },
  };
}

export class TokenReader {
  private readonly rules = new Map<string, LexerRule[]>();
  private readonly unreadable: TokenType;
  private end = 0;

  /**
   * @param rules in order: the first one that reads decides
   * @param unreadable the type of what none of them reads, so that nothing of a line is lost
   */
  constructor(rules: readonly LexerRule[], unreadable: TokenType) {
    this.unreadable = unreadable;
    for (const rule of rules) {
      for (const character of rule.starts) {
        const known = this.rules.get(character);
        if (known === undefined) this.rules.set(character, [rule]);
        else known.push(rule);
      }
    }
  }

  /** The tokens of a text, in time linear in its length. White space is left out. */
  read(text: string, offset: number): IToken[] {
    const tokens: IToken[] = [];
    let unreadableSince = -1;
    let at = 0;
    while (at < text.length) {
      const isBlank = isSpace(text.charCodeAt(at));
      // What could not be read is a token too: what stands behind it is not behind the one before.
      const before = unreadableSince < 0 ? tokens : NONE;
      const rule = isBlank ? undefined : this.ruleAt(text, at, before);
      if (unreadableSince >= 0 && (isBlank || rule !== undefined)) {
        tokens.push(new Token(this.unreadable, text.slice(unreadableSince, at), unreadableSince + offset));
        unreadableSince = -1;
      }
      if (rule !== undefined) {
        const image = text.slice(at, this.end);
        tokens.push(new Token(rule.typeOf?.(image) ?? rule.type, image, at + offset));
        at = this.end;
      } else {
        if (!isBlank && unreadableSince < 0) unreadableSince = at;
        at++;
      }
    }
    if (unreadableSince >= 0)
      tokens.push(new Token(this.unreadable, text.slice(unreadableSince), unreadableSince + offset));
    return tokens;
  }

  /** The first rule that reads at a place; where its token ends is then in `end`. */
  private ruleAt(text: string, at: number, before: readonly IToken[]): LexerRule | undefined {
    for (const rule of this.rules.get(text.charAt(at)) ?? NONE) {
      this.end = rule.endOf(text, at, before);
      if (this.end > at) return rule;
    }
    return undefined;
  }
}

const NONE: readonly never[] = [];

/**
 * A class of its own: the engine keeps places as whole numbers only where every object of a shape has whole numbers, and
 * chevrotain's token for the end of a text stands at no number at all.
 */
class Token implements IToken {
  readonly image: string;
  readonly startOffset: number;
  readonly tokenType: TokenType;
  readonly tokenTypeIdx: number;

  constructor(type: TokenType, image: string, startOffset: number) {
    this.image = image;
    this.startOffset = startOffset;
    this.tokenType = type;
    this.tokenTypeIdx = type.tokenTypeIdx as number;
  }
}

/**
 * What the reading of a diary has asked of the definitions so far. As long as someone only changes what was never asked for,
 * what was read stays as it is: a size that is written down, a price, a limit of a part that nobody has looked at.
 */
import type { LostLine } from "../lost-lines.ts";
import { mayBeAbout } from "../lost-reasons.ts";
import type { RecordWord } from "../lowering/definition-record.ts";
import type { Aspect, AspectSet } from "../tree/aspect.ts";
import { MOST_NUMBERS, numberOf } from "../tree/aspect.ts";
import type { Definitions, DefinitionsInForce } from "../tree/definitions.ts";
import type { SourcedRecord, TreeNode } from "../tree/node.ts";

/** What two texts of the blocks say otherwise, of the same things. */
export interface DefinedOtherwise {
  readonly aspects: ReadonlyMap<TreeNode, ReadonlySet<Aspect>>;
  /** The lines of blocks that could no longer be read, or can be again. */
  readonly lost: readonly LostLine[];
}

/** Bits in one number of the list. */
const BITS = 32;
/** So many numbers of the list are of one thing. */
const OF_THING = MOST_NUMBERS / BITS;

export class Asked {
  /** Of each thing, by its order, the aspects that were asked for. */
  private readonly bits: Uint32Array;
  /** What was asked for of all things. */
  private readonly sets: Set<AspectSet>;
  /** The things that were looked for in the lines that could not be read. */
  private readonly soughtIn: Set<TreeNode>;
  /** Whether all of these lines were asked for. */
  private allLost: boolean;

  /** @param things how many there are in the tree */
  constructor(things: number, before?: Asked) {
    this.bits = before?.bits.slice() ?? new Uint32Array(things * OF_THING);
    this.sets = new Set(before?.sets);
    this.soughtIn = new Set(before?.soughtIn);
    this.allLost = before?.allLost === true;
  }

  copy(): Asked {
    return new Asked(0, this);
  }

  ask({ order }: TreeNode, aspect: Aspect): void {
    const bit = numberOf(aspect);
    const index = order * OF_THING + Math.floor(bit / BITS);
    this.bits[index] = (this.bits[index] ?? 0) | (1 << (bit % BITS));
  }

  askOfAll(aspects: AspectSet): void {
    this.sets.add(aspects);
  }

  /** Whether a thing is among the lines that could not be read. */
  seek(node: TreeNode): void {
    this.soughtIn.add(node);
  }

  askForLost(): void {
    this.allLost = true;
  }

  /** Whether anything was asked for that is otherwise. */
  hasAny({ aspects, lost }: DefinedOtherwise): boolean {
    for (const [node, those] of aspects) {
      for (const aspect of those) if (this.has(node, aspect)) return true;
      for (const set of this.sets) if (set.hasAnyOf(those)) return true;
    }
    return lost.length > 0 && (this.allLost || lost.some((line) => this.mayBeAboutSought(line)));
  }

  private has({ order }: TreeNode, aspect: Aspect): boolean {
    const bit = numberOf(aspect);
    const index = order * OF_THING + Math.floor(bit / BITS);
    return ((this.bits[index] ?? 0) & (1 << (bit % BITS))) !== 0;
  }

  private mayBeAboutSought(line: LostLine): boolean {
    for (const node of this.soughtIn) if (mayBeAbout(node, line)) return true;
    return false;
  }
}

/** Definitions that note what is asked of them. */
export class AskedDefinitions implements Definitions {
  private readonly definitions: DefinitionsInForce;
  private readonly asked: Asked;

  constructor(definitions: DefinitionsInForce, asked: Asked) {
    this.definitions = definitions;
    this.asked = asked;
  }

  get moment(): object {
    return this.definitions.moment;
  }

  all<W extends RecordWord>(node: TreeNode, word: W): readonly SourcedRecord<W>[] {
    this.asked.ask(node, word);
    return this.definitions.all(node, word);
  }

  one<W extends RecordWord>(node: TreeNode, word: W): SourcedRecord<W> | undefined {
    this.asked.ask(node, word);
    return this.definitions.one(node, word);
  }

  asWritten<W extends RecordWord>(node: TreeNode, word: W): SourcedRecord<W> | undefined {
    this.asked.ask(node, word);
    return this.definitions.asWritten(node, word);
  }

  /** The reading of a diary asks for one thing after the other. */
  counting(): never {
    throw new Error("it would be noted as having asked for everything");
  }

  unread(node: TreeNode): readonly string[] {
    this.asked.ask(node, "unread");
    return this.definitions.unread(node);
  }

  characteristics(node: TreeNode): readonly string[] {
    this.asked.ask(node, "characteristics");
    return this.definitions.characteristics(node);
  }

  ofThing(node: TreeNode, { aspects }: AspectSet): object {
    for (const aspect of aspects) this.asked.ask(node, aspect);
    return this.definitions.ofThing(node);
  }

  since(aspects: AspectSet): object {
    this.asked.askOfAll(aspects);
    return this.definitions.since(aspects);
  }
}

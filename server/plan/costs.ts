/**
 * What the build has cost: goods as ordered or bought, outside work, other spending, and hours; by assembly, supplier
 * and month, against the budget.
 *
 * Prices of goods are without tax, and the tax of the vehicle is added to them; bills, quotations and spending are taken
 * as they were written. Of outside work the bill counts, else the quotation.
 */
import type { Build } from "../build/build.ts";
import type { FactList } from "../build/fact-list.ts";
import { recordOf } from "../build/judgement.ts";
import { KeptOfAll, KeptOfEach } from "../build/kept-of-each.ts";
import type { Counted } from "../build/lowering/definition-record.ts";
import { Remembered } from "../build/remembered.ts";
import type { Place } from "../build/source.ts";
import type { Standing } from "../build/standing.ts";
import type { DatedFact } from "../build/states.ts";
import type { TreeNode } from "../build/tree/node.ts";
import type { IsoDate } from "../quantities/dates.ts";
import type { Decimal } from "../quantities/decimal.ts";
import { ZERO } from "../quantities/decimal.ts";
import type { Currency, ExchangeRate, Money } from "../quantities/money.ts";
import { convertMoney, percentOfMoney, roundMoney, timesMoney } from "../quantities/money.ts";

export type CostKind = "goods" | "outside work" | "other";

export interface Cost {
  readonly kind: CostKind;
  readonly money: Money;
  readonly tax: Money;
  readonly date: IsoDate;
  /** What it is for; undefined where the log does not say. */
  readonly node: TreeNode | undefined;
  readonly supplier: string | undefined;
  /** False for a quotation that no bill has replaced, and for goods not yet received. */
  readonly final: boolean;
  readonly text: string;
  readonly place: Place;
}

export interface WorkedHours {
  readonly hours: Decimal;
  readonly date: IsoDate;
  readonly job: string;
  readonly node: TreeNode | undefined;
  readonly place: Place;
}

export interface Costs {
  readonly costs: readonly Cost[];
  /** Goods without any price: what is known costs more than this says. */
  readonly unpriced: readonly { readonly node: TreeNode; readonly place: Place }[];
  readonly hours: readonly WorkedHours[];
  readonly labour: Money | undefined;
  readonly budget: Money | undefined;
  /** In the currency of the build, tax included; undefined without a currency. */
  readonly total: Money | undefined;
  /** Currencies that no rate leads from: they are not in the total. */
  readonly withoutRate: readonly Currency[];
}

const remembered = new WeakMap<Build, Costs>();
const reckonings = new KeptOfAll<Costs>();

/** The costs of a build; the same object as long as nothing else has been spent. */
export function costsOf(build: Build): Costs {
  const known = remembered.get(build);
  if (known !== undefined) return known;
  const { standing, diary } = build;
  const { facts } = diary;
  const bought = facts.ofAny(["ordered", "bought"]) as readonly Goods[];
  const goods = takenGoods.of(standing, bought, [], (own, dated) => [goodsOf(own, dated)]);
  const others = OTHERS.map((word) => facts.of(word));
  const costs = reckonings.of(standing, [goods, ...others], (own) => new Reckoning(own, facts, goods).run());
  remembered.set(build, costs);
  return costs;
}

/** One lot sent out: what was quoted for it, and what was billed since. */
interface Sending {
  readonly quote: Money | undefined;
  bill: Money | undefined;
  readonly node: TreeNode | undefined;
}

type Goods = DatedFact<"ordered" | "bought">;

/** Facts that say what something has cost, or how long it took, besides those of goods. */
const TAKEN = ["returned", "spent", "worked"] as const;
const SENT = ["sent", "back"] as const;
const OTHERS = [...TAKEN, ...SENT] as const;

/** What an order or purchase has cost. */
interface TakenGoods extends Pick<Costs, "costs" | "unpriced"> {
  readonly dated: Goods;
}

const takenGoods = new KeptOfEach<Goods, TakenGoods>();

/** A cost in the currency of the build, tax included. */
const rememberedGross = new Remembered<Cost, Money | undefined>();

class Reckoning {
  private readonly standing: Standing;
  private readonly facts: FactList;
  private readonly goods: ReadonlyMap<DatedFact, TakenGoods>;
  private readonly costs: Cost[] = [];
  private readonly unpriced: { readonly node: TreeNode; readonly place: Place }[] = [];
  private readonly hours: WorkedHours[] = [];

  constructor(standing: Standing, facts: FactList, goods: readonly TakenGoods[]) {
    this.standing = standing;
    this.facts = facts;
    this.goods = new Map(goods.map((taken) => [taken.dated, taken]));
  }

  run(): Costs {
    for (const fact of this.facts.ofAny(["ordered", "bought", ...TAKEN])) this.take(fact);
    this.takeOutsideWork();
    const { definitions, gathered } = this.standing;
    const { root } = gathered.tree;
    const currency = definitions.one(root, "currency")?.record.currency;
    const { total, withoutRate } = this.sum(currency);
    return {
      costs: [...this.costs].sort((a, b) => (a.date < b.date ? -1 : a.date > b.date ? 1 : 0)),
      unpriced: this.unpriced,
      hours: this.hours,
      labour: definitions.one(root, "labour")?.record.money,
      budget: definitions.one(root, "budget")?.record.money,
      total,
      withoutRate,
    };
  }

  private take(dated: DatedFact): void {
    const { fact, date, place } = dated;
    switch (fact.word) {
      case "ordered":
      case "bought": {
        const taken = this.goods.get(dated);
        this.costs.push(...(taken?.costs ?? []));
        this.unpriced.push(...(taken?.unpriced ?? []));
        return;
      }
      case "returned":
        if (fact.credit !== undefined) {
          const { count } = fact.items[0] ?? { count: 1 };
          const back = timesMoney(fact.credit, -count);
          this.add(
            "goods",
            back,
            dated,
            this.nodeOf(fact.items[0]),
            fact.to.text,
            true,
            "credit for what was returned",
          );
        }
        return;
      case "spent": {
        const node =
          fact.on && this.standing.names.one(fact.on, ["assembly", "part", "joint", "system", "circuit"]);
        this.add("other", fact.money, dated, node, undefined, true, fact.note ?? "spent");
        return;
      }
      case "worked": {
        const job = this.standing.names.named("job", fact.on.text);
        const on = job && recordOf(job, "on")?.references[0];
        const node = on && this.standing.names.one(on, ["assembly", "part", "joint", "system", "circuit"]);
        this.hours.push({ hours: fact.hours, date, job: fact.on.text, node, place });
        return;
      }
      default:
    }
  }

  /** Each sending with its quotation, or the bill of the first return of one of its parts. */
  private takeOutsideWork(): void {
    const sendings = new Map<DatedFact<"sent">, Sending>();
    const away = new Map<TreeNode, DatedFact<"sent">>();
    for (const dated of this.facts.ofAny(SENT)) {
      if (dated.fact.word === "sent") {
        const sent = dated as DatedFact<"sent">;
        const nodes = this.partsOf(sent.fact.what);
        sendings.set(sent, {
          quote: sent.fact.cost,
          bill: undefined,
          node: nodes[0],
        });
        for (const node of nodes) away.set(node, sent);
      } else if (dated.fact.word === "back") this.takeBill(dated as DatedFact<"back">, away, sendings);
    }
    for (const [sent, { quote, bill, node }] of sendings) {
      const money = bill ?? quote;
      if (money !== undefined)
        this.add(
          "outside work",
          money,
          sent,
          node,
          sent.fact.to.text,
          bill !== undefined,
          sent.fact.work ?? "outside work",
        );
    }
  }

  private takeBill(
    back: DatedFact<"back">,
    away: ReadonlyMap<TreeNode, DatedFact<"sent">>,
    sendings: ReadonlyMap<DatedFact<"sent">, Sending>,
  ): void {
    const [node] = this.partsOf(back.fact.what);
    const sent = node && away.get(node);
    const sending = sent && sendings.get(sent);
    if (sending === undefined) {
      if (back.fact.cost !== undefined)
        this.add(
          "outside work",
          back.fact.cost,
          back,
          node,
          undefined,
          true,
          "bill for work that the log does not send out",
        );
      return;
    }
    if (back.fact.cost === undefined) return;
    const before = sending.bill;
    sending.bill =
      before?.currency === back.fact.cost.currency
        ? { ...before, amount: before.amount.plus(back.fact.cost.amount) }
        : back.fact.cost;
  }

  private partsOf(references: DatedFact<"sent">["fact"]["what"]): TreeNode[] {
    return references
      .flatMap((reference) => this.standing.names.targets(reference, ["part"]))
      .map(({ node }) => node);
  }

  private nodeOf(item: Counted | undefined): TreeNode | undefined {
    return item && this.standing.names.targets(item.reference, ["part"])[0]?.node;
  }

  private add(...cost: OmitFirst<Parameters<typeof costOf>>): void {
    this.costs.push(costOf(this.standing, ...cost));
  }

  private sum(currency: Currency | undefined): Pick<Costs, "total" | "withoutRate"> {
    if (currency === undefined) return { total: undefined, withoutRate: [] };
    const { definitions, gathered } = this.standing;
    const rates = definitions.all(gathered.tree.root, "rate").map(({ record }) => record.rate);
    const withoutRate = new Set<Currency>();
    let amount = ZERO;
    for (const cost of this.costs) {
      const gross = rememberedGross.of(cost, [currency, ...rates], () => grossIn(currency, cost, rates));
      if (gross === undefined) withoutRate.add(cost.money.currency);
      else amount = amount.plus(gross.amount);
    }
    return { total: roundMoney({ amount, currency }), withoutRate: [...withoutRate] };
  }
}

type OmitFirst<List extends readonly unknown[]> = List extends readonly [unknown, ...infer Rest]
  ? Rest
  : never;

function goodsOf(standing: Standing, dated: Goods): TakenGoods {
  const { definitions, names } = standing;
  const { items, from } = dated.fact;
  const stated = dated.fact.word === "bought" ? dated.fact.price : undefined;
  const costs: Cost[] = [];
  const unpriced: { node: TreeNode; place: Place }[] = [];
  for (const item of items) {
    for (const { node } of names.targets(item.reference, ["part"])) {
      const price = item.at ?? stated ?? definitions.one(node, "price")?.record.money;
      const supplier = from?.text ?? definitions.one(node, "supplier")?.record.reference.text;
      const received = dated.fact.word === "bought" || isReceived(standing, node, dated);
      const text = `${item.count} × ${node.title ?? node.path}`;
      if (price === undefined) unpriced.push({ node, place: dated.place });
      else {
        const money = timesMoney(price, item.count);
        costs.push(costOf(standing, "goods", money, dated, node, supplier, received, text));
      }
    }
  }
  return { dated, costs, unpriced };
}

function isReceived({ supply }: Standing, node: TreeNode, dated: DatedFact): boolean {
  const lines = supply.get(node)?.orders ?? [];
  return lines.filter(({ fact }) => fact === dated).every(({ count, received }) => received >= count);
}

function costOf(
  { definitions, gathered }: Standing,
  kind: CostKind,
  money: Money,
  { date, place }: DatedFact,
  node: TreeNode | undefined,
  supplier: string | undefined,
  final: boolean,
  text: string,
): Cost {
  const percent = definitions.one(gathered.tree.root, "tax")?.record.share.times(100) ?? ZERO;
  const tax = kind === "goods" ? roundMoney(percentOfMoney(money, percent)) : { ...money, amount: ZERO };
  return { kind, money: roundMoney(money), tax, date, node, supplier, final, text, place };
}

/** Undefined where no rate leads there. */
function grossIn(
  currency: Currency,
  { money, tax }: Cost,
  rates: readonly ExchangeRate[],
): Money | undefined {
  const gross = convertMoney({ ...money, amount: money.amount.plus(tax.amount) }, currency, rates);
  return "fault" in gross ? undefined : gross;
}

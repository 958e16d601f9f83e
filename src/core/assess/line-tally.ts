import type { Line } from '../model/delivery.js';
import { omitUndefined } from '../model/omit-undefined.js';
import { type TradeQuantity, type TradeUnit, thousandths, tradeUnit } from '../model/quantity.js';
import type { LineOutcome, OutcomeAmount, OutcomeFate, OutcomeStatement } from '../model/results.js';

/** What the record says was shipped of a line, by unit, in thousandths. */
export function shippedOf({ pallets, cartons, shipped = {} }: Line): Map<TradeUnit, number> {
  const all = { ...omitUndefined({ pallets, cartons }), ...shipped };
  return new Map(
    tradeUnit.options.flatMap((unit) => {
      const count = all[unit];
      return count === undefined ? [] : [[unit, Math.round(count * 1000)]];
    }),
  );
}

type Counts = Partial<Record<OutcomeFate | 'over', number>>;
/** Fates that a later word can change; what is short or over stays so. */
type Changeable = 'accepted' | 'excepted' | 'refused';

/** What a statement did to the amounts of a line. */
export interface Tallied {
  /** More than there was to speak of, in thousandths; it is not counted. */
  excess: number;
  /** False when everything had been spoken of before, so that the statement changes nothing. */
  counted: boolean;
}

/**
 * The amounts of one line, statement by statement. A quantity is taken from what nobody has spoken of, then from what
 * was said otherwise before: a later word holds. A statement without a quantity speaks of the rest, or of everything
 * when it says `all`. Goods that are short or over stay so, whatever becomes of the others.
 */
export class LineTally {
  readonly #shipped: ReadonlyMap<TradeUnit, number>;
  readonly #counts = new Map<TradeUnit, Counts>();
  /** What became of the goods that no quantity speaks of. */
  #rest: Changeable | 'unloaded' | undefined;

  constructor(line: Line) {
    this.#shipped = shippedOf(line);
  }

  add({ outcome, quantity, all, reasons, rest }: OutcomeStatement): Tallied {
    if (all === true) this.#everything(outcome === 'refused' ? 'refused' : 'accepted');
    switch (outcome) {
      case 'unloaded':
        this.#rest ??= 'unloaded';
        return COUNTED;
      case 'accepted-with-exceptions':
        return this.#except(quantity, reasons);
      case 'accepted':
      case 'refused': {
        if (quantity === undefined) return all === true ? COUNTED : this.#others(outcome);
        const excess = this.#take(quantity, outcome);
        if (rest !== undefined) this.#others(rest);
        return { excess, counted: true };
      }
    }
  }

  amounts(): OutcomeAmount[] {
    const mixed = [...this.#counts.values()].filter(isDivided).length > 0;
    return [...this.#counts].map(([unit, counts]) => this.#amountOf(unit, counts, mixed));
  }

  verdict(): LineOutcome['is'] {
    const has = (fate: OutcomeFate | 'over') =>
      [...this.#counts.values()].some((counts) => (counts[fate] ?? 0) > 0);
    const left = this.#isLeft();
    const refused = has('refused') || (this.#rest === 'refused' && left);
    const other = has('accepted') || has('excepted') || (left && this.#rest !== 'refused');
    if (refused) return other ? 'refused-in-part' : 'refused';
    if (has('excepted') || has('short') || has('over') || this.#rest === 'excepted')
      return 'accepted-with-exceptions';
    if (has('accepted') || this.#rest === 'accepted') return 'accepted';
    return this.#rest === 'unloaded' ? 'unloaded' : 'not-recorded';
  }

  /** Whether goods may be left that no quantity speaks of: in each unit that was divided. */
  #isLeft(): boolean {
    const divided = [...this.#counts].filter(([, counts]) => isDivided(counts));
    return divided.every(([unit, counts]) => {
      const shipped = this.#shipped.get(unit);
      return shipped === undefined || shipped - (counts.short ?? 0) - sum(counts) > 0;
    });
  }

  #amountOf(unit: TradeUnit, counts: Counts, mixed: boolean): OutcomeAmount {
    const shipped = this.#shipped.get(unit);
    const given = Object.fromEntries(
      Object.entries(counts)
        .filter(([, count]) => count > 0)
        .map(([fate, count]) => [fate, count / 1000]),
    );
    const amount: OutcomeAmount = {
      unit,
      ...omitUndefined({ shipped: shipped === undefined ? undefined : shipped / 1000 }),
      ...given,
    };
    const left = shipped === undefined ? 0 : shipped - (counts.short ?? 0) - sum(counts);
    // Where another unit divides the goods, what is left in this one is divided too, nobody knows how.
    if (left <= 0 || (mixed && !isDivided(counts))) return amount;
    const fate = this.#rest ?? 'open';
    return { ...amount, [fate]: (amount[fate] ?? 0) + left / 1000 };
  }

  /** An exception is noted on goods that are taken: it undoes no refusal of a part. */
  #except(quantity: TradeQuantity | undefined, reasons: OutcomeStatement['reasons']): Tallied {
    if (quantity === undefined) return this.#others('excepted');
    this.#others('accepted');
    const counts = this.#of(quantity.unit);
    const amount = thousandths(quantity.amount);
    if (reasons.includes('overage')) {
      counts.over = (counts.over ?? 0) + amount;
      return COUNTED;
    }
    const fate = reasons.includes('shortage') ? 'short' : 'excepted';
    return { excess: this.#take(quantity, fate), counted: true };
  }

  /** A fate for what no statement speaks of yet. */
  #others(fate: Changeable): Tallied {
    if (this.#rest !== undefined || !this.#isLeft()) return { excess: 0, counted: false };
    this.#rest = fate;
    return COUNTED;
  }

  #everything(fate: 'accepted' | 'refused'): void {
    this.#rest = fate;
    for (const [unit, { short, over, excepted }] of this.#counts)
      this.#counts.set(
        unit,
        omitUndefined({ short, over, excepted: fate === 'refused' ? undefined : excepted }),
      );
  }

  /** Gives so much of a unit a fate, and returns what there was not. */
  #take({ unit, amount }: TradeQuantity, fate: Changeable | 'short'): number {
    const wanted = thousandths(amount);
    const counts = this.#of(unit);
    const shipped = this.#shipped.get(unit);
    const unspoken = shipped === undefined ? wanted : shipped - (counts.short ?? 0) - sum(counts);
    let missing = Math.max(0, wanted - (this.#rest === fate && shipped !== undefined ? 0 : unspoken));
    for (const other of TAKEN_FROM[fate]) {
      const moved = Math.min(missing, counts[other] ?? 0);
      counts[other] = (counts[other] ?? 0) - moved;
      missing -= moved;
    }
    counts[fate] = (counts[fate] ?? 0) + wanted - missing;
    return missing;
  }

  #of(unit: TradeUnit): Counts {
    const counts = this.#counts.get(unit) ?? {};
    this.#counts.set(unit, counts);
    return counts;
  }
}

const COUNTED: Tallied = { excess: 0, counted: true };
/**
 * In this order goods change their fate when no others are left: an exception concerns goods that were taken before any
 * that were refused, and what is short was counted among those that were taken.
 */
const TAKEN_FROM: Readonly<Record<Changeable | 'short', readonly Changeable[]>> = {
  accepted: ['refused', 'excepted'],
  refused: ['excepted', 'accepted'],
  excepted: ['accepted', 'refused'],
  short: ['accepted', 'excepted'],
};

/** What is accepted, excepted or refused by quantity. */
const sum = ({ accepted = 0, excepted = 0, refused = 0 }: Counts) => accepted + excepted + refused;
const isDivided = (counts: Counts) => sum(counts) > 0;

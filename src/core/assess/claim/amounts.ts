import type { AmountItem } from '../../model/claim.js';
import { type Currency, type MinorUnits, type Money, minorUnits } from '../../model/money.js';
import { omitUndefined } from '../../model/omit-undefined.js';
import type { AmountStep, AmountWorksheet, MoneyRange } from '../../model/results.js';
import type { ClaimEntry } from '../../model/state.js';
import { inProportion, weightLimitOf } from './cmr-charges.js';
import {
  afterCosts,
  atLeastZero,
  atMost,
  type Combined,
  combined,
  type Figure,
  type FiguresByScope,
  minus,
  plus,
  roundedBy,
  sortedSeqs,
  spanning,
  total,
  WHOLE_CLAIM,
  ZERO_FIGURE,
} from './figures.js';
import { currentEntries } from './quantities.js';
import { type AmountNote, type StatedAmounts, statedAmounts } from './stated-amounts.js';
import { termsOf } from './terms.js';
import { type Basis, soundValue, type Valuation, valuationOf } from './value-measure.js';

/**
 * The worksheet of amounts of one claim, from its entries in any order: the value by the measure of what governs, less
 * arrived value or net salvage, freight unless the value includes it, less credits, plus costs, capped by a released
 * value; under the CMR carriage charges on top of the cap and no further damages. Interest is in no sum. The sum is
 * in the currency of the claimed amount, else in the currency of most amounts. Rules and sources: docs/method.md,
 * "Claims: amounts". Undefined when no amount was claimed or stated.
 */
export function amountsOf(entries: readonly ClaimEntry[]): AmountWorksheet | undefined {
  const counted = currentEntries(entries);
  const claimed = counted.findLast((one) => one.is === 'received')?.amount;
  const currency = claimed?.currency ?? usualCurrency(counted);
  if (currency === undefined) return undefined;
  if (termsOf({ entries: counted }).contradicts !== undefined) return uncounted(currency, claimed, counted);
  const said = statedAmounts(counted, currency);
  const lines = new Set(counted.flatMap((one) => ('line' in one && one.line ? [one.line] : [])));
  const valuation = valuationOf(counted);
  const sheet = new Worksheet(said, lines, valuation);
  const result = sheet.result();
  return {
    currency,
    measure: valuation.measure,
    measureBy: valuation.by,
    steps: sheet.steps,
    ...omitUndefined({
      claimed: claimed && minorUnits(claimed),
      computed: result && rangeOf(result),
      invoiceStandsIn: sheet.invoiceStandsIn,
      weightLimit: valuation.governs === 'cmr' ? weightLimitOf(counted) : undefined,
    }),
    notes: [...said.notes, ...sheet.notes, ...measureNotTaken(counted, valuation)],
  };
}

/** The worksheet while the stated terms contradict each other: the measure hangs on them, so that nothing is summed. */
function uncounted(
  currency: Currency,
  claimed: Money | undefined,
  entries: readonly ClaimEntry[],
): AmountWorksheet {
  const { measure, by } = valuationOf(entries);
  return {
    currency,
    measure,
    measureBy: by,
    steps: [],
    ...omitUndefined({ claimed: claimed && minorUnits(claimed) }),
    notes: [],
  };
}

/** Terms that agree on a measure while the CMR governs. */
function measureNotTaken(entries: readonly ClaimEntry[], { governs }: Valuation): AmountNote[] {
  const seqs = entries.flatMap((one) => (one.is === 'terms' && one.measure !== undefined ? [one.seq] : []));
  return governs === 'cmr' && seqs.length > 0
    ? [{ is: 'counted-once', seqs, detail: 'measure-not-under-cmr' }]
    : [];
}

const rangeOf = ({ low, high }: Figure): MoneyRange => ({
  low: low.value as MinorUnits,
  high: high.value as MinorUnits,
});

function usualCurrency(entries: readonly ClaimEntry[]): Currency | undefined {
  const counts = new Map<Currency, number>();
  for (const one of entries) {
    const code = one.is === 'amount' ? (one.total ?? one.each)?.currency : undefined;
    if (code !== undefined) counts.set(code, (counts.get(code) ?? 0) + 1);
  }
  return [...counts].sort((a, b) => b[1] - a[1])[0]?.[0];
}

/** Salvage proceeds of each line or of the whole, less their costs. */
const netOf = (salvage: FiguresByScope, cost: FiguresByScope): FiguresByScope =>
  new Map([...salvage].map(([scope, figure]) => [scope, minus(figure, cost.get(scope) ?? ZERO_FIGURE)]));

/** Both by scope: what stands in one of them alone stays as it is. */
const joined = (one: FiguresByScope, other: FiguresByScope): FiguresByScope =>
  new Map([
    ...one,
    ...[...other].map(([scope, figure]) => [scope, plus(one.get(scope) ?? ZERO_FIGURE, figure)] as const),
  ]);

class Worksheet {
  readonly steps: AmountStep[] = [];
  readonly notes: AmountNote[] = [];
  invoiceStandsIn: AmountWorksheet['invoiceStandsIn'];
  readonly #stated: StatedAmounts;
  readonly #lines: ReadonlySet<string>;
  readonly #valuation: Valuation;

  constructor(said: StatedAmounts, lines: ReadonlySet<string>, valuation: Valuation) {
    this.#stated = said;
    this.#lines = lines;
    this.#valuation = valuation;
  }

  /** Adds the steps and returns the supported amount; undefined without a sound value. */
  result(): Figure | undefined {
    const sound = this.#sound();
    const rest = this.#rest();
    if (this.#valuation.governs === 'cmr') return this.#underCmr(sound?.figure, rest);
    const freight = this.#freight(sound?.basis);
    const charges = this.#item('carriage-charges');
    if (charges !== undefined) this.#note('counted-once', charges.seqs, 'charges-not-in-sum');
    const credits = this.#item('credit');
    const costs = total(
      (['mitigation-cost', 'inspection-cost', 'disposal-cost'] as const).map(
        (item) => this.#item(item) ?? ZERO_FIGURE,
      ),
    );
    if (credits !== undefined) this.#step('credits', credits);
    if (costs.seqs.length > 0) this.#step('costs', costs);
    const cap = this.#item('released-value');
    if (sound === undefined) {
      this.#note('no-paper', [], 'value-sound');
      if (cap !== undefined) this.#step('released-value', cap);
      return undefined;
    }
    if (rest === undefined) this.#note('no-paper', [], 'value-arrived');
    const harmed = minus(sound.figure, rest ?? ZERO_FIGURE);
    const loss = plus(minus(plus(harmed, freight ?? ZERO_FIGURE), credits ?? ZERO_FIGURE), costs);
    this.#step('loss', loss);
    if (cap !== undefined) this.#step('released-value', cap);
    const claimable = atLeastZero(cap === undefined ? loss : atMost(loss, cap));
    this.#step('claimable', claimable);
    return claimable;
  }

  /**
   * The sum under the CMR: the loss in value from the value at acceptance (articles 23(1) and 25(1)), capped, and on top
   * the carriage charges in proportion to it (23(4)); no further damages are payable.
   */
  #underCmr(base: Figure | undefined, rest: Figure | undefined): Figure | undefined {
    const credits = this.#item('credit');
    const cap = this.#item('released-value');
    const further = (['mitigation-cost', 'inspection-cost', 'disposal-cost'] as const).flatMap(
      (item) => this.#item(item)?.seqs ?? [],
    );
    if (further.length > 0) this.#note('counted-once', further, 'no-further-damages');
    const due = this.#item('freight-due');
    if (due !== undefined) this.#note('counted-once', due.seqs, 'freight-not-paid');
    const paid = (['freight-paid', 'carriage-charges'] as const).map(
      (item) => this.#item(item) ?? ZERO_FIGURE,
    );
    const charges = total(paid);
    if (base === undefined) {
      this.#note('no-paper', [], 'value-sound');
      if (charges.seqs.length > 0) this.#note('counted-once', charges.seqs, 'charges-not-in-sum');
      if (credits !== undefined) this.#step('credits', credits);
      if (cap !== undefined) this.#step('released-value', cap);
      return undefined;
    }
    if (rest === undefined) this.#note('no-paper', [], 'value-arrived');
    const loss = atLeastZero(minus(base, rest ?? ZERO_FIGURE));
    this.#step('loss', loss);
    if (cap !== undefined) this.#step('released-value', cap);
    const refunded = inProportion(charges, loss, base);
    if (charges.seqs.length > 0) this.#step('carriage-charges', refunded);
    if (credits !== undefined) this.#step('credits', credits);
    const capped = cap === undefined ? loss : atMost(loss, cap);
    const claimable = atLeastZero(minus(plus(capped, refunded), credits ?? ZERO_FIGURE));
    this.#step('claimable', claimable);
    return claimable;
  }

  /** The value by the measure, where documents state it. */
  #sound(): { figure: Figure; basis: Basis } | undefined {
    const sound = soundValue(this.#stated, this.#lines, this.#valuation.measure);
    if (sound === undefined) {
      // Values by another measure are kept beside, and nothing is made of them.
      for (const item of ['market-value', 'origin-value', 'invoice-value', 'agreed-value'] as const)
        for (const { seqs } of this.#stated.of(item).values())
          this.#note('counted-once', seqs, 'not-the-measure');
      return undefined;
    }
    this.notes.push(...sound.notes);
    this.invoiceStandsIn = sound.invoiceStandsIn;
    return { figure: this.#scopes('value-sound', sound.scoped, sound.found), basis: sound.basis };
  }

  /** Remaining value: the appraisal on arrival, or sale proceeds less costs. */
  #rest(): Figure | undefined {
    const arrived = this.#stated.of('arrived-value');
    const salvage = this.#stated.of('salvage');
    const cost = joined(this.#stated.of('salvage-cost'), this.#stated.of('refunds'));
    const valued = combined(arrived, this.#lines);
    if (valued !== undefined) this.#scopes('value-arrived', arrived, valued);
    const sold = combined(salvage, this.#lines);
    // When each line was sold on its own, their costs are costs of the whole sale.
    const byLine = salvage.size > 0 && !salvage.has(WHOLE_CLAIM);
    const spent = combined(cost, byLine ? new Set(salvage.keys()) : this.#lines);
    for (const one of [sold, spent]) if (one !== undefined) this.#beside(one);
    const after = spent === undefined ? sold?.figure : afterCosts(sold, spent);
    if (after !== undefined) {
      if (spent?.beside === undefined || spent.accounts !== undefined)
        this.#eachLine('salvage-net', netOf(salvage, cost));
      this.#step('salvage-net', after);
    }
    if (valued === undefined || after === undefined) return after ?? valued?.figure;
    return this.#together(arrived, salvage, { valued, after, sold });
  }

  /**
   * Appraised and sold value together: for different lines they add up; for the same line they are two accounts of
   * one remaining value.
   */
  #together(
    arrived: FiguresByScope,
    salvage: FiguresByScope,
    { valued, after, sold }: { valued: Combined; after: Figure; sold: Combined | undefined },
  ): Figure {
    const apart =
      !arrived.has(WHOLE_CLAIM) &&
      !salvage.has(WHOLE_CLAIM) &&
      ![...arrived.keys()].some((line) => salvage.has(line));
    // Costs without a sale say nothing about the remaining value.
    if (apart || sold === undefined) return plus(valued.figure, after);
    this.#note('counted-once', [...valued.figure.seqs, ...after.seqs], 'arrived-and-salvage');
    if (valued.all && sold?.all === false) return valued.figure;
    if (sold?.all && !valued.all) return after;
    return spanning(valued.figure, after);
  }

  /**
   * A market value at destination includes the freight: unpaid freight is saved (Chicago, M. & St. P. Ry. v.
   * McCaull-Dinsmore Co., 253 U.S. 97 (1920)), paid freight is not added again. An invoice value at origin excludes
   * it.
   */
  #freight(basis: Basis | undefined): Figure | undefined {
    const paid = this.#item('freight-paid');
    const due = this.#item('freight-due');
    if (basis === undefined || (paid === undefined && due === undefined)) return undefined;
    if (basis === 'agreed') {
      this.#note('counted-once', [...(paid?.seqs ?? []), ...(due?.seqs ?? [])], 'freight-with-agreed-value');
      return undefined;
    }
    const added = paid ?? ZERO_FIGURE;
    const saved = minus(ZERO_FIGURE, due ?? ZERO_FIGURE);
    if (basis === 'mixed') {
      this.#note('counted-once', [...added.seqs, ...saved.seqs], 'freight-of-both-kinds');
      return this.#step('freight', plus(spanning(ZERO_FIGURE, added), spanning(ZERO_FIGURE, saved)));
    }
    const [counts, drops, why] =
      basis === 'market'
        ? ([due && saved, paid, 'freight-in-market-value'] as const)
        : ([paid, due, 'freight-not-paid'] as const);
    if (drops !== undefined) this.#note('counted-once', drops.seqs, why);
    return counts && this.#step('freight', counts);
  }

  #item(item: AmountItem): Figure | undefined {
    const found = combined(this.#stated.of(item), this.#lines);
    return found && this.#beside(found);
  }

  #beside({ figure, beside }: Combined): Figure {
    if (beside !== undefined) this.#note('counted-once', beside, 'whole-and-lines');
    return figure;
  }

  /** Steps for each line that was counted, and the step for the whole. */
  #scopes(id: AmountStep['id'], scoped: FiguresByScope, found: Combined): Figure {
    this.#eachLine(id, scoped);
    return this.#step(id, this.#beside(found));
  }

  #eachLine(id: AmountStep['id'], scoped: FiguresByScope): void {
    if (scoped.size < 2) return;
    for (const [line, figure] of scoped) if (line !== WHOLE_CLAIM) this.#step(id, figure, line);
  }

  #step(id: AmountStep['id'], figure: Figure, line?: string): Figure {
    const rounded = roundedBy(figure);
    this.steps.push({
      id,
      ...omitUndefined({ line }),
      range: rangeOf(figure),
      seqs: sortedSeqs(figure.seqs),
      ...omitUndefined({ rounded }),
    });
    return figure;
  }

  #note(is: AmountNote['is'], seqs: readonly number[], detail: string): void {
    this.notes.push({ is, seqs: sortedSeqs(seqs), detail });
  }
}

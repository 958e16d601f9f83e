/** An amount in hundredths, with what rounding added to it, in thousandths of a hundredth. */
export interface Sum {
  value: number;
  off: number;
}

/** Least and most of one thing, with the entries of the claim that say it. */
export interface Figure {
  low: Sum;
  high: Sum;
  seqs: readonly number[];
}

const ZERO: Sum = { value: 0, off: 0 };
export const ZERO_FIGURE: Figure = { low: ZERO, high: ZERO, seqs: [] };

const sum = (a: Sum, b: Sum): Sum => ({ value: a.value + b.value, off: a.off + b.off });
const opposite = ({ value, off }: Sum): Sum => ({ value: 0 - value, off: 0 - off });
const least = (a: Sum, b: Sum): Sum => (b.value < a.value ? b : a);
const most = (a: Sum, b: Sum): Sum => (b.value > a.value ? b : a);

/** Numbers of entries once each, in their order. */
export const sortedSeqs = (seqs: Iterable<number>): number[] => [...new Set(seqs)].sort((a, b) => a - b);
const both = (a: Figure, b: Figure) => sortedSeqs([...a.seqs, ...b.seqs]);

export const plus = (a: Figure, b: Figure): Figure => ({
  low: sum(a.low, b.low),
  high: sum(a.high, b.high),
  seqs: both(a, b),
});
/** The widest that the difference can be: the least of the one without the most of the other, and so on. */
export const minus = (a: Figure, b: Figure): Figure => ({
  low: sum(a.low, opposite(b.high)),
  high: sum(a.high, opposite(b.low)),
  seqs: both(a, b),
});
/** Two accounts of the same thing: from the least of both to the most. */
export const spanning = (a: Figure, b: Figure): Figure => ({
  low: least(a.low, b.low),
  high: most(a.high, b.high),
  seqs: both(a, b),
});
/** No more than the other. */
export const atMost = (a: Figure, cap: Figure): Figure => ({
  low: least(a.low, cap.low),
  high: least(a.high, cap.high),
  seqs: both(a, cap),
});
/** No less than nothing. */
export const atLeastZero = (a: Figure): Figure => ({
  ...a,
  low: most(a.low, ZERO),
  high: most(a.high, ZERO),
});
export const total = (figures: Iterable<Figure>): Figure => [...figures].reduce(plus, ZERO_FIGURE);

/** What rounding did at the end of the range where it did more, in hundredths; absent when it did nothing. */
export function roundedBy({ low, high }: Figure): number | undefined {
  const off = Math.abs(high.off) > Math.abs(low.off) ? high.off : low.off;
  return off === 0 ? undefined : off / 1000;
}

/** Figures of one item by what they are of: a line's id, or `WHOLE` for all of the claim. */
export type FiguresByScope = ReadonlyMap<string, Figure>;
export const WHOLE_CLAIM = '';

/** One figure out of those for lines and for the whole, and whether it is of every line of the claim. */
export interface Combined {
  figure: Figure;
  all: boolean;
  /** Entries of figures for lines and for the whole that stand beside each other, so that not all were added. */
  beside?: readonly number[];
  /** The two accounts where both are of everything. */
  accounts?: readonly [whole: Figure, lines: Figure];
}

/**
 * Figures for lines add up. One for the whole claim stands beside them as another account of the same when they are
 * of every line, and in their place when they are not: nothing is counted twice.
 */
export function combined(scoped: FiguresByScope, lines: ReadonlySet<string>): Combined | undefined {
  const whole = scoped.get(WHOLE_CLAIM);
  const parts = [...scoped].filter(([scope]) => scope !== WHOLE_CLAIM);
  if (parts.length === 0) return whole && { figure: whole, all: true };
  const added = total(parts.map(([, figure]) => figure));
  const all = [...lines].every((line) => scoped.has(line));
  if (whole === undefined) return { figure: added, all };
  const beside = both(whole, added);
  return all
    ? { figure: spanning(whole, added), all: true, beside, accounts: [whole, added] }
    : { figure: whole, all: true, beside };
}

/** What is left after costs. Where both are told of the whole and of each line, each account has its own costs. */
export function afterCosts(of: Combined | undefined, costs: Combined): Figure {
  const [whole, lines] = of?.accounts ?? [];
  const [wholeCosts, lineCosts] = costs.accounts ?? [];
  return whole && lines && wholeCosts && lineCosts
    ? spanning(minus(whole, wholeCosts), minus(lines, lineCosts))
    : minus(of?.figure ?? ZERO_FIGURE, costs.figure);
}

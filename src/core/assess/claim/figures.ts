/** An amount in minor units, and the rounding in it in thousandths of one. */
export interface Sum {
  value: number;
  off: number;
}

/** Lowest and highest amount of one item, with the entries that state it. */
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

/** Sequence numbers of entries, ascending, each once. */
export const sortedSeqs = (seqs: Iterable<number>): number[] => [...new Set(seqs)].sort((a, b) => a - b);
const both = (a: Figure, b: Figure) => sortedSeqs([...a.seqs, ...b.seqs]);

export const plus = (a: Figure, b: Figure): Figure => ({
  low: sum(a.low, b.low),
  high: sum(a.high, b.high),
  seqs: both(a, b),
});
/** The widest range of the difference: lowest less the other's highest, highest less the other's lowest. */
export const minus = (a: Figure, b: Figure): Figure => ({
  low: sum(a.low, opposite(b.high)),
  high: sum(a.high, opposite(b.low)),
  seqs: both(a, b),
});
/** Two accounts of one thing: from the lower of both to the higher. */
export const spanning = (a: Figure, b: Figure): Figure => ({
  low: least(a.low, b.low),
  high: most(a.high, b.high),
  seqs: both(a, b),
});
/** A figure capped by another. */
export const atMost = (a: Figure, cap: Figure): Figure => ({
  low: least(a.low, cap.low),
  high: least(a.high, cap.high),
  seqs: both(a, cap),
});
/** A figure with zero as its minimum. */
export const atLeastZero = (a: Figure): Figure => ({
  ...a,
  low: most(a.low, ZERO),
  high: most(a.high, ZERO),
});
export const total = (figures: Iterable<Figure>): Figure => [...figures].reduce(plus, ZERO_FIGURE);

/** Rounding at the end of the range with the larger rounding, in minor units; absent when there is none. */
export function roundedBy({ low, high }: Figure): number | undefined {
  const off = Math.abs(high.off) > Math.abs(low.off) ? high.off : low.off;
  return off === 0 ? undefined : off / 1000;
}

/** Figures of one item by line id, with `WHOLE_CLAIM` for the whole. */
export type FiguresByScope = ReadonlyMap<string, Figure>;
export const WHOLE_CLAIM = '';

/** One figure from those of lines and of the whole, and whether it covers every line of the claim. */
export interface Combined {
  figure: Figure;
  all: boolean;
  /** Entries of line figures and whole figures that are alternatives, so that not all were added. */
  beside?: readonly number[];
  /** Both accounts, where each covers everything. */
  accounts?: readonly [whole: Figure, lines: Figure];
}

/**
 * Line figures add up. A figure for the whole claim is an alternative to line figures that cover every line, and
 * replaces line figures that do not: nothing is counted twice.
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

/** A figure less costs. Where the whole and each line are both stated, each account has its own costs. */
export function afterCosts(of: Combined | undefined, costs: Combined): Figure {
  const [whole, lines] = of?.accounts ?? [];
  const [wholeCosts, lineCosts] = costs.accounts ?? [];
  return whole && lines && wholeCosts && lineCosts
    ? spanning(minus(whole, wholeCosts), minus(lines, lineCosts))
    : minus(of?.figure ?? ZERO_FIGURE, costs.figure);
}

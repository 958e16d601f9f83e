import { exp, log } from '../../model/exponential.js';

/** Cartons of a lot of which some were read. */
export interface Sample {
  taken: number;
  /** How many of those taken are out of range. */
  beyond: number;
  /** Cartons of the lot; left out where they are not known, and then taken as endless. */
  of?: number;
}

/** Shares of the lot that may be out of range, each end with the confidence that was asked for. */
export interface ShareBounds {
  least: number;
  most: number;
  by: 'hypergeometric' | 'binomial';
}

/** A lot with more cartons is taken as endless: the two differ by less than a printed digit there. */
const LARGEST_LOT = 100_000;
const STEPS = 60;
/** A probability that equals the risk but for rounding is still allowed, as in 1 of 3 read among 60: 3/60. */
const ROUNDING = 1e-12;

/**
 * What a sample allows of the whole lot: the exact one-sided bounds of the hypergeometric distribution (the lot is
 * known) or of the binomial one (Clopper and Pearson, Biometrika 26, 1934). They hold only for cartons picked at
 * random.
 * @param confidence of each bound on its own, such as 0.95
 */
export function shareBounds(sample: Sample, confidence = 0.95): ShareBounds {
  const { taken, beyond, of } = sample;
  const risk = 1 - confidence;
  if (of === undefined || of > LARGEST_LOT || of < taken) {
    const atMost = (share: number, count: number) => binomialAtMost(taken, share, count);
    return {
      least: beyond === 0 ? 0 : cross((share) => 1 - atMost(share, beyond - 1) < risk),
      most: beyond === taken ? 1 : cross((share) => atMost(share, beyond) >= risk),
      by: 'binomial',
    };
  }
  const logs = logFactorials(of);
  const atMost = (marked: number, count: number) => hypergeometricAtMost({ of, marked, taken }, count, logs);
  const most = lastOf(beyond, of - (taken - beyond), (marked) => atMost(marked, beyond) >= risk - ROUNDING);
  const least = firstOf(
    beyond,
    most,
    (marked) => beyond === 0 || 1 - atMost(marked, beyond - 1) >= risk - ROUNDING,
  );
  return { least: least / of, most: most / of, by: 'hypergeometric' };
}

/**
 * Readings more, all in range, until no more than a share of the lot may be out of range; undefined where the whole
 * lot would not be enough.
 */
export function furtherReadings(sample: Sample, most: number, confidence = 0.95): number | undefined {
  const last = Math.min(sample.of ?? LARGEST_LOT, LARGEST_LOT) - sample.taken;
  const enough = (more: number) =>
    shareBounds({ ...sample, taken: sample.taken + more }, confidence).most <= most;
  return last < 0 || !enough(last) ? undefined : firstOf(0, last, enough);
}

/** The share at which `holds` turns from true to false, by bisection. */
function cross(holds: (share: number) => boolean): number {
  let [low, high] = [0, 1];
  for (let step = 0; step < STEPS; step += 1) {
    const middle = (low + high) / 2;
    if (holds(middle)) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** The first whole number from `low` to `high` that holds, where all after it hold; `high` when none before it does. */
function firstOf(low: number, high: number, holds: (at: number) => boolean): number {
  let [from, to] = [low, high];
  while (from < to) {
    const middle = Math.floor((from + to) / 2);
    if (holds(middle)) to = middle;
    else from = middle + 1;
  }
  return from;
}

/** The last whole number from `low` to `high` that holds, where all before it hold. */
const lastOf = (low: number, high: number, holds: (at: number) => boolean): number =>
  firstOf(low, high + 1, (at) => at > high || !holds(at)) - 1;

/** Probability that at most `count` of `taken` are out of range, where a share of the lot is. */
function binomialAtMost(taken: number, share: number, count: number): number {
  if (share <= 0) return 1;
  if (share >= 1) return count >= taken ? 1 : 0;
  let term = taken * log(1 - share);
  let sum = exp(term);
  for (let i = 1; i <= count; i += 1) {
    term += log((taken - i + 1) / i) + log(share / (1 - share));
    sum += exp(term);
  }
  return sum;
}

interface Lot {
  of: number;
  marked: number;
  taken: number;
}

function hypergeometricAtMost({ of, marked, taken }: Lot, count: number, logs: Float64Array): number {
  const chosen = (n: number, k: number) => (logs[n] ?? 0) - (logs[k] ?? 0) - (logs[n - k] ?? 0);
  const all = chosen(of, taken);
  let sum = 0;
  for (let i = Math.max(0, taken - (of - marked)); i <= Math.min(count, marked, taken); i += 1)
    sum += exp(chosen(marked, i) + chosen(of - marked, taken - i) - all);
  return sum;
}

/** ln 0! to ln n!. */
function logFactorials(n: number): Float64Array {
  const logs = new Float64Array(n + 1);
  for (let i = 2; i <= n; i += 1) logs[i] = (logs[i - 1] ?? 0) + log(i);
  return logs;
}

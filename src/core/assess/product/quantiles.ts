/** The value below which a share of the values lies, along the straight line between neighbours. */
export function quantile(values: Float64Array, share: number): number {
  const sorted = values.toSorted();
  const place = share * (sorted.length - 1);
  const line = Math.floor(place);
  const below = sorted[line] ?? Number.NaN;
  return below + ((sorted[line + 1] ?? below) - below) * (place - line);
}

/** The share of values for which something holds. */
export function shareOf(values: Float64Array, holds: (value: number) => boolean): number {
  let count = 0;
  for (const value of values) if (holds(value)) count += 1;
  return count / values.length;
}

/** Standard error of a share that was counted in so many cases. */
export const standardErrorOf = (share: number, cases: number): number =>
  Math.sqrt((share * (1 - share)) / cases);

/** Squared correlation of two columns: the share of the variance of one that goes along with the other. */
export function sharedVariance(a: Float64Array, b: Float64Array): number {
  const mean = (values: Float64Array) => values.reduce((sum, value) => sum + value, 0) / values.length;
  const [ma, mb] = [mean(a), mean(b)];
  let [aa, bb, ab] = [0, 0, 0];
  for (let i = 0; i < a.length; i += 1) {
    const [da, db] = [(a[i] ?? 0) - ma, (b[i] ?? 0) - mb];
    aa += da * da;
    bb += db * db;
    ab += da * db;
  }
  return aa === 0 || bb === 0 ? 0 : (ab * ab) / (aa * bb);
}

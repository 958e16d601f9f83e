/**
 * Share of a straight segment above a limit. `d0` and `d1` are the distances from the limit at its ends, positive
 * outside. Exact: the line crosses the limit once, and the integral is a triangle or trapezium.
 */
export function shareOutside(d0: number, d1: number): number {
  if (d0 > 0 && d1 > 0) return 1;
  if (d0 <= 0 && d1 <= 0) return 0;
  const high = Math.max(d0, d1);
  return high / (high - Math.min(d0, d1));
}

/** Mean distance outside over the whole segment; times its length it is the integral of max(0, d). */
export function meanOutside(d0: number, d1: number): number {
  if (d0 > 0 && d1 > 0) return (d0 + d1) / 2;
  return (Math.max(d0, d1, 0) / 2) * shareOutside(d0, d1);
}

/** The four words that Marsaglia starts from. */
const START = [123456789, 362436069, 521288629, 88675123] as const;

/**
 * Uniform numbers from 0 to below 1 that are the same at each run, in every engine: Marsaglia's xorshift with 128 bits
 * ("Xorshift RNGs", Journal of Statistical Software 8(14), 2003), whose first numbers are 3701687786, 458299110 …
 */
export function uniformNumbers(): () => number {
  const whole = xorshift();
  return () => whole() / 4_294_967_296;
}

/** The whole numbers behind `uniformNumbers`. */
export function xorshift(): () => number {
  let [x, y, z, w]: number[] = [...START];
  return () => {
    const t = (x ?? 0) ^ ((x ?? 0) << 11);
    const last = w ?? 0;
    [x, y, z] = [y, z, w];
    w = last ^ (last >>> 19) ^ t ^ (t >>> 8);
    return w >>> 0;
  };
}

/** Milliseconds by which honest clocks may differ: a day, which covers a wrong time zone. Common practice, no source. */
export const CLOCK_TOLERANCE_MS = 24 * 3600_000;

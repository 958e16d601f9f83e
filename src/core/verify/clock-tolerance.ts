/** Clocks of honest machines differ; a day forgives a wrong zone. Milliseconds. */
export const CLOCK_TOLERANCE_MS = 24 * 3600_000;

/** Times counted from 1970 UTC, as programs write them. */
export type Counted = 'seconds' | 'milliseconds';

/** 2000-01-01 and 2100-01-01 UTC in seconds: no log of a delivery lies outside. */
const FROM = 946_684_800;
const TO = 4_102_444_800;

/** In which unit a number can be a time since 1970; undefined for one that is none. */
export function epochOf(value: number): Counted | undefined {
  if (value >= FROM && value < TO) return 'seconds';
  return value >= FROM * 1000 && value < TO * 1000 ? 'milliseconds' : undefined;
}

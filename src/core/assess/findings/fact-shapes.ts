/** Facts that several findings share, by name and kind; see the catalogue. */

export const pulps = {
  line: 'line',
  stop: 'stop',
  count: 'count',
  min: 'temperature',
  max: 'temperature',
  mean: 'temperature',
  low: 'temperature',
  high: 'temperature',
  guard: 'difference',
} as const;
export const pulpsNear = { ...pulps, near: 'count', inRange: 'count' } as const;
export const pulpsOut = { ...pulps, outside: 'count', beyond: 'difference' } as const;
const ends = {
  line: 'line',
  loadMin: 'temperature',
  loadMax: 'temperature',
  deliveryMin: 'temperature',
  deliveryMax: 'temperature',
  low: 'temperature',
  high: 'temperature',
} as const;
export const bothEnds = {
  ...ends,
  change: 'difference',
  guard: 'difference',
  samePlaces: 'count',
  loadWithin: 'flag',
  decided: 'flag',
} as const;
export const air = {
  channel: 'text',
  share: 'share',
  /** Leaving out excursions in normal operation, where there are any. */
  besidesNormal: 'share?',
  coverage: 'share',
  custody: 'duration',
  mean: 'temperature',
  min: 'temperature',
  max: 'temperature',
  low: 'temperature',
  high: 'temperature',
  above: 'duration',
  below: 'duration',
  degreeHoursAbove: 'degree-hours',
  degreeHoursBelow: 'degree-hours',
} as const;
export const setPoints = {
  first: 'text',
  firstSetPoint: 'temperature',
  second: 'text',
  secondSetPoint: 'temperature',
  size: 'difference',
  slip: 'text?',
  since: 'time?',
  lasted: 'duration?',
  told: 'text?',
} as const;
export const excursions = {
  count: 'count',
  total: 'duration',
  longest: 'duration',
  highest: 'temperature?',
  lowest: 'temperature?',
  degreeHours: 'degree-hours',
  firstAt: 'time',
} as const;
export const excursionsOfClass = {
  ...excursions,
  logged: 'count',
  inferred: 'count',
  causes: 'text',
  share: 'share',
} as const;
export const comparedRecorders = {
  mean: 'difference',
  limit: 'difference',
  apart: 'share',
  known: 'duration',
  moved: 'flag?',
} as const;
export const coverage = {
  coverage: 'share',
  custody: 'duration',
  gaps: 'count',
  longestGap: 'duration?',
} as const;
export const published = {
  line: 'line',
  goods: 'text',
  instruction: 'temperature',
  published: 'published',
  secondary: 'flag',
} as const;
/** An exception on a bill of lading or receipt, and who signed it. */
export const exceptionNoted = {
  words: 'text',
  line: 'line?',
  at: 'time?',
  name: 'text?',
  document: 'text?',
} as const;
export const freezingPulps = {
  line: 'line',
  stop: 'stop',
  count: 'count',
  min: 'temperature',
  max: 'temperature',
  guard: 'difference',
  goods: 'text',
  frozen: 'count',
  near: 'count',
  instructed: 'flag',
  published: 'published',
  secondary: 'flag',
} as const;
export const shocks = {
  count: 'count',
  strongest: 'acceleration',
  threshold: 'acceleration?',
  milliseconds: 'count?',
  at: 'time?',
} as const;

import { omitUndefined } from '../../model/omit-undefined.js';
import type { FindingQuantity, Shortfall } from '../../model/results.js';

/**
 * Shortfalls of a rule, with the facts of each; the words are in templates/words/<language>/lacking/<name>.md. A
 * fact of the kinds `thing`, `moment`, `source`, `run`, `position`, `party` names a label; several are separated by
 * commas. A `?` marks a fact that may be absent.
 */
export const shortfallFacts = {
  none: { thing: 'thing', need: 'count' },
  'too-few': { thing: 'thing', have: 'count', need: 'count' },
  'none-at-position': { positions: 'position' },
  'outside-instruction': { count: 'count' },
  'near-instruction-limit': { count: 'count' },
  'no-instruction-to-compare': {},
  'no-instruction': {},
  'no-common-temperature': {},
  'not-in-published-range': { setPoint: 'temperature', published: 'published' },
  'not-in-table': {},
  'source-silent': { source: 'source' },
  'sources-differ': {
    first: 'source',
    firstSays: 'temperature',
    second: 'source',
    secondSays: 'temperature',
  },
  'hand-silent': { party: 'party' },
  'hands-differ': { first: 'party', second: 'party', apart: 'difference' },
  'run-differs': { seen: 'run', asked: 'run' },
  'no-log': {},
  'log-start-unknown': { moment: 'moment' },
  'log-short': { known: 'share', need: 'share' },
  'no-air-in-log': {},
  'air-off': { air: 'temperature', asked: 'temperature', allowed: 'difference' },
  'looks-apart': { longest: 'duration', allowed: 'duration' },
  'fuel-low': { count: 'count', lowest: 'share', need: 'share' },
  'seal-broken': { number: 'text' },
  'seal-differs': { applied: 'text', found: 'text' },
  'no-seal-to-compare': {},
  'should-not-be': { count: 'count' },
  'alarms-not-known': {},
  'alarm-seen': { alarm: 'text', at: 'time' },
  'alarm-unanswered': { alarm: 'text', at: 'time' },
  'stop-unexplained': { from: 'time', length: 'duration' },
  'late-unexplained': { planned: 'time', length: 'duration' },
  'way-not-known': {},
  'stands-in': { moment: 'moment', standIn: 'moment' },
  'subject-proposed': { count: 'count' },
  'hard-to-read': { count: 'count' },
} as const;

interface FactTypes {
  text: string;
  thing: string;
  moment: string;
  source: string;
  run: string;
  position: string;
  party: string;
  count: number;
  temperature: Extract<FindingQuantity, { is: 'temperature' }>;
  difference: Extract<FindingQuantity, { is: 'difference' }>;
  duration: Extract<FindingQuantity, { is: 'duration' }>;
  share: Extract<FindingQuantity, { is: 'share' }>;
  time: Extract<FindingQuantity, { is: 'time' }>;
  published: Extract<FindingQuantity, { is: 'published' }>;
}
export type ShortfallName = keyof typeof shortfallFacts;
type FactsOf<N extends ShortfallName> = {
  [F in keyof (typeof shortfallFacts)[N]]: (typeof shortfallFacts)[N][F] extends keyof FactTypes
    ? FactTypes[(typeof shortfallFacts)[N][F]]
    : never;
};

/** One shortfall, with exactly the facts that are listed for it. */
export function shortfall<N extends ShortfallName>(
  is: N,
  facts: FactsOf<N>,
  of: { line?: { id: string } | undefined; stop?: { id: string } | undefined } = {},
): Shortfall {
  return {
    is,
    facts: { ...facts },
    ...omitUndefined({ line: of.line?.id, stop: of.stop?.id }),
  };
}

export const shortfallKey = (one: Shortfall) => JSON.stringify(one);

import { inGravities } from '../model/acceleration.js';
import { omitUndefined } from '../model/omit-undefined.js';
import type { ShockResult } from '../model/results.js';
import type { ItemOf, RecordState } from '../model/state.js';
import { knownMilliseconds } from '../model/time.js';
import type { Milestones } from './milestones.js';
import { transitWindowOf } from './transit-window.js';

/** Shocks and hard braking in the order of time, each against the threshold that is stated for it. */
export function shocksOf(state: RecordState, milestones: Milestones): ShockResult[] {
  const window = transitWindowOf(milestones);
  return state.evidence
    .filter((item): item is ItemOf<'shock'> => item.kind === 'shock')
    .map((item): ShockResult => {
      const at = knownMilliseconds(item.time);
      const { peak, threshold } = item;
      return {
        evidence: item.evidence,
        what: item.what,
        when:
          at === undefined || window === undefined
            ? 'unknown'
            : at < window.from.at
              ? 'before'
              : at > window.to.at
                ? 'after'
                : 'aboard',
        ...omitUndefined({
          at,
          gravities: peak && inGravities(peak),
          over: peak && threshold && inGravities(peak) >= inGravities(threshold) * (1 - ROUNDING),
        }),
      };
    })
    .sort((a, b) => (a.at ?? Number.POSITIVE_INFINITY) - (b.at ?? Number.POSITIVE_INFINITY));
}

/** A peak that is printed as the threshold reaches it. */
const ROUNDING = 1e-9;

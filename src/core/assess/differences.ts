import { omitUndefined } from '../model/omit-undefined.js';
import type {
  SetPointDifference,
  SetPointStatement,
  TemperatureResult,
  TimeRange,
} from '../model/results.js';
import type { ItemOf, RecordState } from '../model/state.js';
import { knownMilliseconds } from '../model/time.js';

/** Those who can answer for a set point. */
const ANSWERABLE: readonly ItemOf<'contact'>['with'][] = [
  'shipper',
  'broker',
  'dispatcher',
  'carrier',
  'receiver',
];

/** Somebody who was told of something. */
type Told = NonNullable<SetPointDifference['told']>[number];

/** The contacts with those who can answer for a set point, in order of time. */
export function answerable(state: RecordState): Told[] {
  return state.evidence
    .flatMap((item): Told[] => {
      if (item.kind !== 'contact' || !ANSWERABLE.includes(item.with)) return [];
      const at = knownMilliseconds(item.time);
      return at === undefined ? [] : [{ evidence: item.evidence, with: item.with, at }];
    })
    .sort((a, b) => a.at - b.at);
}

/** Set points as the logs held them, in time. */
export type SetPointRuns = readonly (TimeRange & { celsius: number })[];

export const setPointRunsOf = (
  temperatures: readonly TemperatureResult[],
  within?: TimeRange,
): SetPointRuns =>
  temperatures.flatMap(({ setPoints }) =>
    setPoints.flatMap((run) => {
      const from = Math.max(run.from, within?.from ?? run.from);
      const to = Math.min(run.to, within?.to ?? run.to);
      return to > from ? [{ ...run, from, to }] : [];
    }),
  );

/**
 * A difference with since when it stood, how long the log shows it, and who was told from then until the end.
 * Against a log it stands from the first stretch that differs; otherwise from the later of the two words. That
 * somebody was told after it stood does not say that it was about it: the reader sees the contact.
 * @param same values this near to each other are the same, K
 */
export function withExplanation(
  difference: SetPointDifference,
  { contacts, runs, end }: { contacts: readonly Told[]; runs: SetPointRuns; end?: number | undefined },
  same: number,
): SetPointDifference {
  const against = otherThanLog(difference);
  const off =
    against === undefined ? [] : runs.filter((run) => Math.abs(run.celsius - against.celsius) > same);
  const since = off.length > 0 ? Math.min(...off.map((run) => run.from)) : laterOf(difference.between);
  return {
    ...difference,
    ...omitUndefined({
      since,
      told:
        since === undefined
          ? undefined
          : contacts.filter(({ at }) => at >= since && (end === undefined || at <= end)),
      seconds: off.length === 0 ? undefined : off.reduce((sum, run) => sum + run.to - run.from, 0) / 1000,
    }),
  };
}

/** The side that is not a log, when exactly one is. */
function otherThanLog({ between: [a, b] }: SetPointDifference): SetPointStatement | undefined {
  if (a.source === 'log') return b.source === 'log' ? undefined : b;
  return b.source === 'log' ? a : undefined;
}

function laterOf(words: readonly SetPointStatement[]): number | undefined {
  const times = words.flatMap((word) => word.at ?? []);
  return times.length === 0 ? undefined : Math.max(...times);
}

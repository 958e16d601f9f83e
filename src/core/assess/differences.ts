import { omitUndefined } from '../model/omit-undefined.js';
import type {
  SetPointDifference,
  SetPointStatement,
  TemperatureResult,
  TimeRange,
} from '../model/results.js';
import type { ItemOf, RecordState } from '../model/state.js';
import { knownMilliseconds } from '../model/time.js';

/** Parties that can answer for a set point. */
const ANSWERABLE: readonly ItemOf<'contact'>['with'][] = [
  'shipper',
  'broker',
  'dispatcher',
  'carrier',
  'receiver',
];

/** A party that was notified. */
type Told = NonNullable<SetPointDifference['told']>[number];

/** Contacts with parties that can answer for a set point, in order of time. */
export function answerable(state: RecordState): Told[] {
  return state.evidence
    .flatMap((item): Told[] => {
      if (item.kind !== 'contact' || !ANSWERABLE.includes(item.with)) return [];
      const at = knownMilliseconds(item.time);
      return at === undefined ? [] : [{ evidence: item.evidence, with: item.with, at }];
    })
    .sort((a, b) => a.at - b.at);
}

/** Set points held by the logs, in order of time. */
export type SetPointRuns = readonly (TimeRange & { celsius: number; compartment?: string })[];

export const setPointRunsOf = (
  temperatures: readonly TemperatureResult[],
  within?: TimeRange,
): SetPointRuns =>
  temperatures.flatMap(({ setPoints, compartment }) =>
    setPoints.flatMap((run) => {
      const from = Math.max(run.from, within?.from ?? run.from);
      const to = Math.min(run.to, within?.to ?? run.to);
      return to > from ? [{ ...run, from, to, ...omitUndefined({ compartment }) }] : [];
    }),
  );

/**
 * A difference with its start, its duration in the log, and the notices given from then to the end. Against a log
 * it starts with the first stretch that differs, otherwise with the later of the two statements. A notice after the
 * start need not concern the difference; the reader sees the contact.
 * @param same values this close are equal, K
 */
export function withExplanation(
  difference: SetPointDifference,
  { contacts, runs, end }: { contacts: readonly Told[]; runs: SetPointRuns; end?: number | undefined },
  same: number,
): SetPointDifference {
  const against = otherThanLog(difference);
  const off =
    against === undefined
      ? []
      : runs.filter(
          (run) => run.compartment === against.compartment && Math.abs(run.celsius - against.celsius) > same,
        );
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

/** The statement that is not from a log, when exactly one is. */
function otherThanLog({ between: [a, b] }: SetPointDifference): SetPointStatement | undefined {
  if (a.source === 'log') return b.source === 'log' ? undefined : b;
  return b.source === 'log' ? a : undefined;
}

function laterOf(words: readonly SetPointStatement[]): number | undefined {
  const times = words.flatMap((word) => word.at ?? []);
  return times.length === 0 ? undefined : Math.max(...times);
}

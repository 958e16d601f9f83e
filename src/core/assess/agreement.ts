import { omitUndefined } from '../model/omit-undefined.js';
import type {
  SetPointAgreement,
  SetPointDifference,
  SetPointStatement,
  TemperatureResult,
} from '../model/results.js';
import type { ItemOf, RecordState } from '../model/state.js';
import { celsius } from '../model/temperature.js';
import { knownMilliseconds } from '../model/time.js';
import { compartmentOf } from './compartment-of.js';
import { answerable, setPointRunsOf, withExplanation } from './differences.js';
import { guessEntryError } from './entry-errors.js';
import { instructedSetPoints } from './instructed-set-points.js';
import { firstLoading, latestTimeOf, type Milestones } from './milestones.js';
import { markPutRight } from './put-right.js';
import { setPointLegs } from './set-point-legs.js';
import { dominantSetPoint } from './temperature/states.js';

/** Set points nearer than half a degree Fahrenheit are the same, because displays round. Kelvin. */
const SAME = 0.28;

/**
 * The set point that each source states, side by side: the bill's instructions; readings from the bill, shipper,
 * dispatcher and display; and the set point that each log held longest in custody. Two sources differ when their
 * values are more than half a degree Fahrenheit apart; the same pair of values counts once.
 */
export function setPointAgreement(
  state: RecordState,
  temperatures: readonly TemperatureResult[],
  milestones: Milestones,
): SetPointAgreement {
  const from = firstLoading(milestones.stops)?.id;
  const departed = from === undefined ? undefined : latestTimeOf(milestones, from, 'departed')?.at;
  const words = markPutRight(
    [
      ...instructedSetPoints(state.delivery.lines, state),
      ...readWords(state, milestones),
      ...logWords(temperatures),
    ],
    departed,
    SAME,
  );
  const contacts = answerable(state);
  const runs = setPointRunsOf(temperatures);
  const end = temperatures[0]?.custody.to.at;
  const differences = differencesOf(words).map((one) => withExplanation(one, { contacts, runs, end }, SAME));
  const sources = new Set(words.map((word) => word.source));
  return {
    words,
    differences,
    legs: setPointLegs(state, temperatures, milestones, words, differencesOf, SAME),
    verdict: differences.length > 0 ? 'differ' : sources.size < 2 ? 'not-comparable' : 'agree',
  };
}

/**
 * Set points that people read or heard. From the display before departure only the last unit check counts, because
 * the set point may be changed until then.
 */
function readWords(state: RecordState, milestones: Milestones): SetPointStatement[] {
  const items = state.evidence.filter((item): item is ItemOf<'set-point'> => item.kind === 'set-point');
  const from = firstLoading(milestones.stops)?.id;
  const leaving = from === undefined ? undefined : latestTimeOf(milestones, from, 'departed')?.at;
  const early = items.flatMap((item) => {
    const at = knownMilliseconds(item.time);
    const before = at !== undefined && (leaving === undefined || at <= leaving);
    const compartment = compartmentOf(item, state.delivery);
    return item.shownBy === 'display' && before ? [{ item, at, compartment }] : [];
  });
  const superseded = new Set(
    early
      .filter((one) => early.some(({ compartment, at }) => compartment === one.compartment && at > one.at))
      .map(({ item }) => item),
  );
  return items
    .filter((item) => !superseded.has(item))
    .map((item) => {
      const at = knownMilliseconds(item.time);
      return {
        source: item.shownBy,
        celsius: celsius(item.temperature),
        evidence: item.evidence,
        ...omitUndefined({
          at,
          lines: item.line === undefined ? undefined : [item.line],
          compartment: compartmentOf(item, state.delivery),
          run: item.run,
        }),
      };
    });
}

function logWords(temperatures: readonly TemperatureResult[]): SetPointStatement[] {
  return temperatures.flatMap((result) => {
    const value = dominantSetPoint(result.setPoints);
    if (value === undefined) return [];
    const { log: evidence, compartment } = result;
    return [{ source: 'log' as const, celsius: value, evidence, ...omitUndefined({ compartment }) }];
  });
}

/**
 * Differences between statements of the set point of one compartment, largest first. A value that a source repeats is
 * compared once; a statement that names no compartment is not held against one that does, and one that was put right
 * before departure is held against none.
 */
export function differencesOf(
  words: readonly SetPointStatement[],
  same: number = SAME,
): SetPointDifference[] {
  const unlike = new Map<string, SetPointStatement>();
  for (const word of words) {
    if (word.putRight !== undefined) continue;
    const key = `${word.source} ${word.compartment ?? ''} ${word.celsius.toFixed(2)}`;
    if (!unlike.has(key)) unlike.set(key, word);
  }
  const found: SetPointDifference[] = [];
  [...unlike.values()].forEach((first, index, all) => {
    for (const second of all.slice(index + 1)) {
      const kelvin = Math.abs(first.celsius - second.celsius);
      if (first.source === second.source || first.compartment !== second.compartment) continue;
      if (kelvin <= same) continue;
      const slip = guessEntryError(first.celsius, second.celsius);
      found.push({ between: [first, second], kelvin, ...omitUndefined({ slip }) });
    }
  });
  return found.sort((a, b) => b.kelvin - a.kelvin);
}

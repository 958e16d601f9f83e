import type { EvidenceId } from '../model/evidence.js';
import { omitUndefined } from '../model/omit-undefined.js';
import type {
  PublishedRange,
  SetPointDifference,
  SetPointLeg,
  SetPointStatement,
  TemperatureResult,
  TimeRange,
} from '../model/results.js';
import type { EvidenceItem, RecordState } from '../model/state.js';
import { celsius } from '../model/temperature.js';
import { knownMilliseconds } from '../model/time.js';
import { findGoods } from '../reference/goods.js';
import { recommendedTemperatures } from '../reference/limits.js';
import { compartmentOf } from './compartment-of.js';
import { answerable, setPointRunsOf, withExplanation } from './differences.js';
import { instructedSetPoints } from './instructed-set-points.js';
import { legsOf, transitOf, type Leg as Way } from './legs.js';
import type { Milestones } from './milestones.js';
import { publishedLimit } from './published-limits.js';
import { dominantSetPoint } from './temperature/states.js';

/** A leg with its time in transit, where known. */
type Leg = Way & { span?: TimeRange };

/** Compares statements of the set point: see `differencesOf`. */
type Compare = (words: readonly SetPointStatement[]) => SetPointDifference[];

/**
 * Set points on each leg: the bill's instructions and published ranges for the lines aboard, statements and
 * displays at the first stop or in transit, and the set point that the log held longest.
 */
export function setPointLegs(
  state: RecordState,
  temperatures: readonly TemperatureResult[],
  milestones: Milestones,
  words: readonly SetPointStatement[],
  compare: Compare,
  same: number,
): SetPointLeg[] {
  const { stops, lines } = state.delivery;
  const contacts = answerable(state);
  const items = new Map(state.evidence.map((item) => [item.evidence, item]));
  const legs = legsOf(stops, lines).map((way): Leg => {
    const span = transitOf(way, milestones);
    return span === undefined ? way : { ...way, span };
  });
  return legs.map((leg, i) => {
    const runs = setPointRunsOf(temperatures, leg.span);
    const here = [
      ...instructedSetPoints(leg.lines, state),
      ...words.filter((word) => statedOnLeg(word, items, leg, i === 0)),
      ...unitChecksOnLeg(state, leg),
      ...(leg.span === undefined ? [] : logWords(temperatures, leg.span)),
    ];
    return {
      from: leg.from,
      to: leg.to,
      ...omitUndefined({ span: leg.span }),
      lines: leg.lines.map(({ id }) => id),
      published: leg.lines.flatMap(published),
      words: here,
      differences: compare(here).map((one) =>
        withExplanation(one, { contacts, runs, end: leg.span?.to }, same),
      ),
    };
  });
}

/**
 * Whether a statement was made at the leg's first stop or in transit; one with neither stop nor time belongs to the
 * first leg.
 */
function statedOnLeg(
  word: SetPointStatement,
  items: ReadonlyMap<EvidenceId, EvidenceItem>,
  leg: Leg,
  first: boolean,
): boolean {
  // Instructions are those of the lines on board.
  if (word.evidence === undefined || word.lines !== undefined || word.source === 'log') return false;
  const item = items.get(word.evidence);
  if (item?.line !== undefined && !leg.lines.some(({ id }) => id === item.line)) return false;
  const stop = item?.place?.stop;
  if (stop !== undefined) return stop === leg.from;
  if (word.at === undefined || leg.span === undefined) return first;
  return word.at <= leg.span.to && (first || word.at >= leg.span.from);
}

/** Set points from unit checks in transit. */
function unitChecksOnLeg(state: RecordState, leg: Leg): SetPointStatement[] {
  const { span } = leg;
  if (span === undefined) return [];
  return state.evidence.flatMap((item): SetPointStatement[] => {
    if (item.kind !== 'round' || item.setPoint === undefined) return [];
    const at = knownMilliseconds(item.time);
    if (at === undefined || at < span.from || at > span.to) return [];
    return [
      {
        source: 'display',
        celsius: celsius(item.setPoint),
        at,
        evidence: item.evidence,
        ...omitUndefined({ compartment: compartmentOf(item, state.delivery) }),
      },
    ];
  });
}

function logWords(
  temperatures: readonly TemperatureResult[],
  span: { from: number; to: number },
): SetPointStatement[] {
  return temperatures.flatMap((result) => {
    const value = dominantSetPoint([...setPointRunsOf([result], span)]);
    const { log: evidence, compartment } = result;
    return value === undefined
      ? []
      : [{ source: 'log' as const, celsius: value, evidence, ...omitUndefined({ compartment }) }];
  });
}

function published({ id, goods }: Leg['lines'][number]): PublishedRange[] {
  const key = findGoods(goods)?.key;
  if (key === undefined) return [];
  return recommendedTemperatures(key).map((range) => ({ line: id, ...publishedLimit(range) }));
}

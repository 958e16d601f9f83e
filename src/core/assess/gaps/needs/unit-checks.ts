import type { Shortfall } from '../../../model/results.js';
import type { SimpleNeed } from '../../../model/rule-set.js';
import type { ItemOf } from '../../../model/state.js';
import { celsius, kelvin } from '../../../model/temperature.js';
import { knownMilliseconds } from '../../../model/time.js';
import { ROUNDING } from '../../bands.js';
import type { RuleContext, Scope } from '../context.js';
import { groupsFor, verdictOf } from '../counting.js';
import { nearestInstruction } from '../instructed.js';
import { shortfall } from '../shortfalls.js';
import type { NeedVerdict } from '../verdict.js';
import { type EvidenceWindow, windowEnds } from '../window.js';

type UnitCheckNeed = Extract<SimpleNeed, { reading: 'round' }>;
type UnitCheck = ItemOf<'round'>;
const MS_PER_HOUR = 3_600_000;

/**
 * Unit checks: how many, how far apart (from the window's start to its end, or to now), fuel at least as required,
 * box temperature near the instruction. A window shorter than the longest allowed interval needs none.
 */
export function unitCheckVerdict(context: RuleContext, need: UnitCheckNeed): NeedVerdict {
  const ask = {
    candidates: context.evidence.of('round'),
    rejectionReason: (item: UnitCheck) =>
      (need.fuelAtLeast !== undefined && item.fuel === undefined) ||
      (need.boxAirWithin !== undefined && item.boxAir === undefined)
        ? ('bad-value' as const)
        : undefined,
    thing:
      need.fuelAtLeast !== undefined ? 'fuel-level' : need.boxAirWithin !== undefined ? 'box-air' : 'round',
  };
  const groups = groupsFor(context, need, ask);
  const counted = groups.flatMap((group) => group.counted);
  const apart = need.everyHours === undefined ? undefined : longestInterval(context, need, counted);
  if (apart !== undefined && need.everyHours !== undefined && apart.window <= need.everyHours)
    return { ...verdictOf(groups, { ...need, atLeast: 0 }, ask), outcome: 'met' };
  const verdict = verdictOf(groups, need, ask, () => tooFarApart(apart?.hours, need.everyHours));
  const against = [...lowFuel(need, counted), ...airOff(context, need, counted)];
  if (against.length === 0) return verdict;
  return {
    ...verdict,
    outcome: 'contradicted',
    against: [...new Set(against.flatMap((one) => one.items.map((item) => item.evidence)))],
    lacking: [...verdict.lacking, ...against.map((one) => one.lack)],
  };
}

function tooFarApart(hours: number | undefined, allowed: number | undefined): Shortfall[] {
  if (hours === undefined || allowed === undefined || hours <= allowed) return [];
  return [
    shortfall('looks-apart', {
      longest: { is: 'duration', seconds: hours * 3600 },
      allowed: { is: 'duration', seconds: allowed * 3600 },
    }),
  ];
}

interface Against {
  items: UnitCheck[];
  lack: Shortfall;
}

function lowFuel({ fuelAtLeast: need }: UnitCheckNeed, counted: readonly UnitCheck[]): Against[] {
  if (need === undefined) return [];
  const items = counted.filter((item) => item.fuel !== undefined && item.fuel < need);
  if (items.length === 0) return [];
  const lowest = Math.min(...items.map((item) => item.fuel ?? 1));
  return [
    {
      items,
      lack: shortfall('fuel-low', {
        count: items.length,
        lowest: { is: 'share', of: lowest },
        need: { is: 'share', of: need },
      }),
    },
  ];
}

/** Only the last unit check of the window counts, because the trailer is being cooled until then. */
function airOff(
  context: RuleContext,
  { boxAirWithin }: UnitCheckNeed,
  counted: readonly UnitCheck[],
): Against[] {
  const last = counted
    .filter((item) => item.boxAir !== undefined)
    .reduce<UnitCheck | undefined>(
      (latest, item) =>
        latest === undefined || (knownMilliseconds(item.time) ?? 0) >= (knownMilliseconds(latest.time) ?? 0)
          ? item
          : latest,
      undefined,
    );
  if (boxAirWithin === undefined || last?.boxAir === undefined) return [];
  const air = celsius(last.boxAir);
  const far = nearestInstruction(context, air);
  if (far === undefined || far.kelvin <= kelvin(boxAirWithin) + ROUNDING) return [];
  return [
    {
      items: [last],
      lack: shortfall('air-off', {
        air: { is: 'temperature', celsius: air },
        asked: { is: 'temperature', celsius: far.asked },
        allowed: { is: 'difference', kelvin: kelvin(boxAirWithin) },
      }),
    },
  ];
}

/**
 * Longest interval without a unit check, and the window's length, in hours. Undefined when the window's start is
 * unknown.
 */
export function longestInterval(
  context: Pick<RuleContext, 'milestones' | 'stage' | 'now'> & { scope?: Scope },
  need: Pick<EvidenceWindow, 'at' | 'after' | 'before' | 'within'>,
  rounds: readonly UnitCheck[],
): { hours: number; window: number } | undefined {
  const ends = windowEnds(context, need, undefined, undefined);
  const start = ends.after?.at;
  if (start === undefined) return undefined;
  const end = Math.max(start, Math.min(context.now, ends.before?.at ?? context.now));
  const times = rounds
    .map((item) => knownMilliseconds(item.time))
    .filter((at) => at !== undefined)
    .sort((a, b) => a - b);
  let hours = 0;
  let last = start;
  for (const at of [...times, end]) {
    hours = Math.max(hours, (at - last) / MS_PER_HOUR);
    last = at;
  }
  return { hours, window: (end - start) / MS_PER_HOUR };
}

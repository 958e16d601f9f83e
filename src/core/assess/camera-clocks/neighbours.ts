import type { EvidenceId } from '../../model/evidence.js';
import type { EvidenceItem, ItemOf, RecordState } from '../../model/state.js';
import {
  type KnownTime,
  knownMilliseconds,
  localTime,
  milliseconds,
  readLocal,
  toInstant,
  type Zone,
} from '../../model/time.js';
import { zoneRules } from '../../model/zone-rules.js';
import { photosByCamera } from './camera.js';

/** Milliseconds by which a later photo may seem earlier: clocks are set, and satellite fixes lag. */
const SLACK = 120_000;
/** Names such as 20261101_013000 are made from the clock in question, so they show no order. */
const NAMED_BY_TIME = /\d{8}[_-]?\d{4,6}/;

/**
 * Resolves local times that daylight saving makes ambiguous or nonexistent by the photos of the same camera with
 * neighbouring file numbers. Of the instants that such a time can mean, those that break the order of file numbers
 * are discarded; when one remains, it is taken. The flag stays, and names the photos used. Where the known times do
 * not follow the numbers (a counter that was reset, two phones of one model), nothing is resolved.
 */
export function reconcileByNeighbours(state: RecordState): RecordState {
  const settled = new Map<EvidenceId, EvidenceItem>();
  for (const photos of photosByCamera(state.evidence).values())
    for (const roll of rollsOf(photos))
      for (const photo of reconcileRoll(roll)) settled.set(photo.evidence, photo);
  if (settled.size === 0) return state;
  return { ...state, evidence: state.evidence.map((item) => settled.get(item.evidence) ?? item) };
}

interface Frame {
  photo: ItemOf<'photo'>;
  number: number;
  /** Instants that the photo's time can mean, ascending; one when there is no doubt. */
  candidates: number[];
}

/** Photos numbered by one counter, in its order; photos without a known time are left out. */
function rollsOf(photos: readonly ItemOf<'photo'>[]): Frame[][] {
  const rolls = new Map<string, Frame[]>();
  for (const photo of photos) {
    const stem = photo.file.name.replace(/\.[^./\\]*$/, '');
    const match = /^(.*?)(\d{1,8})$/.exec(stem);
    const candidates = candidateTimes(photo);
    if (match === null || NAMED_BY_TIME.test(stem) || candidates.length === 0) continue;
    const [, prefix = '', digits = ''] = match;
    const roll = rolls.get(prefix) ?? [];
    roll.push({ photo, number: Number(digits), candidates });
    rolls.set(prefix, roll);
  }
  return [...rolls.values()].map((roll) => roll.sort((a, b) => a.number - b.number));
}

function candidateTimes({ time, flags }: ItemOf<'photo'>): number[] {
  const at = knownMilliseconds(time);
  if (at === undefined || time.is !== 'known') return [];
  const doubtful = flags.some(({ is }) => is === 'time-happened-twice' || is === 'time-never-happened');
  return doubtful && time.basis === 'place-zone' ? meanings(time) : [at];
}

/**
 * Instants that a doubtful local time can mean: both passes of it, or the clock before and after it was put
 * forward.
 */
function meanings({ stated, zone, instant }: KnownTime): number[] {
  const local = localTime.safeParse(stated);
  if (!local.success) return [milliseconds(instant)];
  const reading = readLocal(local.data, zone);
  switch (reading.is) {
    case 'one':
      return [milliseconds(reading.instant)];
    case 'twice':
      return [milliseconds(reading.earlier), milliseconds(reading.later)];
    case 'never':
      return [milliseconds(reading.shifted) - skipped(reading.shifted, zone), milliseconds(reading.shifted)];
  }
}

/** Milliseconds by which the zone's clock was put forward within a day of an instant. */
function skipped(at: string, zone: Zone): number {
  const clock = zoneRules(zone);
  const day = 86_400_000;
  return (clock.offset(Date.parse(at) + day) - clock.offset(Date.parse(at) - day)) * 60_000;
}

function reconcileRoll(roll: readonly Frame[]): ItemOf<'photo'>[] {
  if (roll.every(({ candidates }) => candidates.length === 1) || !inOrder(roll)) return [];
  const earliest = bounds(roll, 1);
  const latest = bounds(roll, -1);
  return roll.flatMap((frame, i) => {
    if (frame.candidates.length === 1) return [];
    const low = earliest[i - 1] ?? Number.NEGATIVE_INFINITY;
    const high = latest[i + 1] ?? Number.POSITIVE_INFINITY;
    const fitting = frame.candidates.filter((at) => at >= low - SLACK && at <= high + SLACK);
    const [only, other] = fitting;
    return only === undefined || other !== undefined ? [] : [reconciledPhoto(frame, only, roll, i)];
  });
}

function inOrder(roll: readonly Frame[]): boolean {
  const sure = roll.flatMap(({ candidates: [at, other] }) =>
    at === undefined || other !== undefined ? [] : [at],
  );
  return sure.every((at, i) => at >= (sure[i - 1] ?? at) - SLACK);
}

/** Upwards (1): the earliest instant that each frame allows; downwards (−1): the latest. */
function bounds(roll: readonly Frame[], direction: 1 | -1): number[] {
  const found: number[] = new Array(roll.length);
  let bound = direction * Number.NEGATIVE_INFINITY;
  for (let step = 0; step < roll.length; step++) {
    const i = direction === 1 ? step : roll.length - 1 - step;
    const moments = roll[i]?.candidates ?? [];
    const fitting = moments.filter((at) => (at - bound) * direction >= -SLACK || !Number.isFinite(bound));
    // A frame that fits nowhere constrains nothing.
    const next = direction === 1 ? fitting[0] : fitting.at(-1);
    if (next !== undefined) bound = next;
    found[i] = bound;
  }
  return found;
}

function reconciledPhoto(
  { photo, candidates }: Frame,
  at: number,
  roll: readonly Frame[],
  index: number,
): ItemOf<'photo'> {
  if (photo.time.is !== 'known') return photo;
  const [first = at, last = at] = candidates;
  const apart = (last - first) / 1000;
  const beside = [roll[index - 1], roll[index + 1]].flatMap((frame) => frame?.photo.evidence ?? []);
  const words = `settled as ${toInstant(at)} by the order of its neighbours ${beside.join(' and ')}`;
  return {
    ...photo,
    time: {
      ...photo.time,
      instant: toInstant(at),
      uncertaintySeconds: Math.max(1, photo.time.uncertaintySeconds - apart),
    },
    flags: photo.flags.map((flag) =>
      flag.is === 'time-happened-twice' || flag.is === 'time-never-happened'
        ? { ...flag, detail: `${flag.detail}; ${words}` }
        : flag,
    ),
  };
}

import type { EvidenceId } from '../model/evidence.js';
import { omitUndefined } from '../model/omit-undefined.js';
import type { ItemOf, RecordState } from '../model/state.js';
import { knownMilliseconds } from '../model/time.js';

/**
 * Bits of 64 in which two pictures of one scene may differ. Measured on the 20 drawn photos of fixtures/demo: saved
 * again at quality 30 or scaled to 700 pixels they move by 0 or 1 bit, darkened by 30 % by at most 3, and
 * brightened until parts are white by at most 11; pictures of the same subject in the same framing are 0 to 7 apart
 * whenever they were taken, others 10 and more.
 */
const CLOSE = 4;
const SAME_PICTURE = 2;
/** Milliseconds. One display photographed an hour apart looks the same, and is not one scene twice. */
const SOON = 60_000;

export interface ScenePair {
  photos: [EvidenceId, EvidenceId];
  /** Bits of 64 in which their hashes differ. */
  bits: number;
  /** Seconds between them; undefined when one has no known time. */
  seconds?: number;
}

/** Pairs of photos of the same scene: alike and taken within a minute, or nearly equal where a time is unknown. */
export function sameScenes(state: Pick<RecordState, 'evidence'>): ScenePair[] {
  const hashed = state.evidence.flatMap((item) =>
    item.kind === 'photo' && item.sceneHash !== undefined ? [prepared(item, item.sceneHash)] : [],
  );
  const pairs: ScenePair[] = [];
  for (const [i, one] of hashed.entries())
    for (const other of hashed.slice(i + 1)) {
      const bits = ones(one.high ^ other.high) + ones(one.low ^ other.low);
      if (bits > CLOSE) continue;
      const apart = one.at === undefined || other.at === undefined ? undefined : Math.abs(one.at - other.at);
      if (apart === undefined ? bits > SAME_PICTURE : apart > SOON) continue;
      pairs.push({
        photos: [one.evidence, other.evidence],
        bits,
        ...omitUndefined({ seconds: apart === undefined ? undefined : apart / 1000 }),
      });
    }
  return pairs;
}

/** The record with the flag `same-scene` on both photos of each pair. The flag informs; it is no fault. */
export function flagSameScenes(state: RecordState): RecordState {
  const pairs = sameScenes(state);
  if (pairs.length === 0) return state;
  const partners = new Map<EvidenceId, string[]>();
  for (const { photos, bits, seconds } of pairs)
    for (const [one, other] of [photos, [photos[1], photos[0]] as const]) {
      const when = seconds === undefined ? 'one has no known time' : `taken ${Math.round(seconds)} s apart`;
      const words = `looks like ${other} (${bits} of 64 bits differ, ${when})`;
      partners.set(one, [...(partners.get(one) ?? []), words]);
    }
  const evidence = state.evidence.map((item) => {
    const found = partners.get(item.evidence);
    if (item.kind !== 'photo' || found === undefined) return item;
    return { ...item, flags: [...item.flags, { is: 'same-scene' as const, detail: found.join('; ') }] };
  });
  return { ...state, evidence };
}

function prepared({ evidence, time }: ItemOf<'photo'>, hash: string) {
  return {
    evidence,
    at: knownMilliseconds(time),
    high: Number.parseInt(hash.slice(0, 8), 16) | 0,
    low: Number.parseInt(hash.slice(8), 16) | 0,
  };
}

/** Count of bits set in a 32-bit number. */
function ones(bits: number): number {
  let count = 0;
  for (let rest = bits; rest !== 0; rest &= rest - 1) count += 1;
  return count;
}

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { flagSameScenes, sameScenes } from '../../../src/core/assess/scenes.js';
import { type PhotoFields, photos } from './camera-clocks/photos.js';
import { state } from './made.js';

const NONE = { is: 'none', why: 'of a test' } as const;
const HASH = 'f0f0f0f000ff00ff';
const close = (bits: number) =>
  (BigInt(`0x${HASH}`) ^ ((1n << BigInt(bits)) - 1n)).toString(16).padStart(16, '0');
const pairsOf = (...list: PhotoFields[]) => sameScenes({ evidence: photos(...list) });

describe('one scene photographed twice', () => {
  it.each<[string, PhotoFields, PhotoFields, boolean]>([
    [
      'the same picture within a minute',
      { minutes: 0, sceneHash: HASH },
      { minutes: 1, sceneHash: HASH },
      true,
    ],
    [
      'a few bits apart within a minute',
      { minutes: 0, sceneHash: HASH },
      { minutes: 0.5, sceneHash: close(4) },
      true,
    ],
    ['more bits apart', { minutes: 0, sceneHash: HASH }, { minutes: 0.5, sceneHash: close(5) }, false],
    [
      'the same framing an hour later',
      { minutes: 0, sceneHash: HASH },
      { minutes: 60, sceneHash: HASH },
      false,
    ],
    [
      'a copy that lost its time',
      { minutes: 0, sceneHash: HASH },
      { minutes: 0, time: NONE, sceneHash: close(2) },
      true,
    ],
    [
      'hardly a copy, without time',
      { minutes: 0, sceneHash: HASH },
      { minutes: 0, time: NONE, sceneHash: close(3) },
      false,
    ],
    ['no hash: an even surface', { minutes: 0 }, { minutes: 0, sceneHash: HASH }, false],
  ])('%s', (_, one, other, same) => expect(pairsOf(one, other)).toHaveLength(same ? 1 : 0));

  it('is flagged on both photos, naming the other, and changes nothing else', () => {
    const before = state(
      photos({ minutes: 0, sceneHash: HASH }, { minutes: 0.5, sceneHash: close(1) }, { minutes: 9 }),
    );
    const after = flagSameScenes(before);
    expect(
      after.evidence.map((item) => ('flags' in item ? item.flags.map((flag) => flag.detail) : [])),
    ).toEqual([
      ['looks like e2 (1 of 64 bits differ, taken 30 s apart)'],
      ['looks like e1 (1 of 64 bits differ, taken 30 s apart)'],
      [],
    ]);
    expect(after.evidence[2]).toBe(before.evidence[2]);
  });

  it('is told by as many bits as differ (against counting digits)', () => {
    const hash = fc.bigInt({ min: 0n, max: (1n << 64n) - 1n });
    fc.assert(
      fc.property(hash, fc.uniqueArray(fc.integer({ min: 0, max: 63 }), { maxLength: 4 }), (one, flips) => {
        const other = flips.reduce((bits, at) => bits ^ (1n << BigInt(at)), one);
        const [pair] = pairsOf(
          { minutes: 0, sceneHash: one.toString(16).padStart(16, '0') },
          { minutes: 0, sceneHash: other.toString(16).padStart(16, '0') },
        );
        expect(pair?.bits).toBe(flips.length);
      }),
    );
  });
});

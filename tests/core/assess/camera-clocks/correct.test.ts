import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { correctionAt } from '../../../../src/core/assess/camera-clocks/correct.js';
import { correctLog } from '../../../../src/core/assess/camera-clocks/log-times.js';
import { correctPhotoTimes } from '../../../../src/core/assess/camera-clocks/photo-times.js';
import { cameraPoints, logPoints, shownAt } from '../../../../src/core/assess/camera-clocks/points.js';
import type { EvidenceId } from '../../../../src/core/model/evidence.js';
import type { RecordState } from '../../../../src/core/model/state.js';
import type { ClockPoint } from '../../../../src/core/model/time.js';
import { log, state } from '../made.js';
import { CAMERA, clockComparison, MOMENT, photos, UNIT } from './photos.js';

const minutes = (n: number) => MOMENT + n * 60_000;
const points = (...list: [minutes: number, addSeconds: number][]): ClockPoint[] =>
  list.map(([at, addSeconds], seq) => ({ at: minutes(at), addSeconds, uncertaintySeconds: 2, seq }));

describe('what is added to a clock', () => {
  // Between 100 s at 0 min and 160 s at 60 min, by the clock from −100 s to 3440 s.
  it.each([
    ['before the first comparison stays as measured there', -30, 100],
    ['at the first', -100 / 60, 100],
    ['half way by the clock, half of the change', (-100 + 3540 / 2) / 60, 130],
    ['at the last', 3440 / 60, 160],
    ['after the last stays as measured there', 300, 160],
  ])('%s', (_, at, add) => {
    expect(correctionAt(points([0, 100], [60, 160]), minutes(at))?.addSeconds).toBeCloseTo(add, 9);
  });

  it('is nothing without a comparison', () => expect(correctionAt([], MOMENT)).toBeUndefined());

  const someClock = fc
    .array(fc.tuple(fc.integer({ min: 1, max: 600 }), fc.integer({ min: -7200, max: 7200 })), {
      minLength: 1,
      maxLength: 6,
    })
    .map((steps) => {
      let at = 0;
      const comparisons = steps.map(([step, add], i) => {
        at += step;
        return clockComparison(UNIT, i + 1, at, add);
      });
      return logPoints(comparisons, 'e900' as EvidenceId);
    });

  it('can be taken off again: correction and its reverse are the identity, and the order of times stays', () => {
    fc.assert(
      fc.property(someClock, fc.array(fc.integer({ min: -3000, max: 6000 })), (clock, times) => {
        const reverse = clock.map((point) => ({
          ...point,
          at: shownAt(point),
          addSeconds: -point.addSeconds,
        }));
        const sorted = times.map(minutes).sort((a, b) => a - b);
        const right = sorted.map((at) => at + (correctionAt(clock, at)?.addSeconds ?? 0) * 1000);
        for (const [i, at] of right.entries()) {
          const back = at + (correctionAt(reverse, at)?.addSeconds ?? 0) * 1000;
          // Numbers of today's milliseconds are 0.0002 apart, and the clock runs up to 241 times too fast.
          expect(Math.abs(back - (sorted[i] ?? Number.NaN))).toBeLessThan(0.1);
          expect(at).toBeGreaterThanOrEqual(right[i - 1] ?? at);
        }
      }),
    );
  });
});

describe('the comparisons that stand', () => {
  const list = [
    clockComparison(CAMERA, 1, 0, 10),
    clockComparison(UNIT, 2, 0, 20),
    clockComparison({ is: 'unit-log', evidence: 'e5' as EvidenceId }, 3, 10, 30),
    clockComparison(CAMERA, 4, 0, 11),
    clockComparison(CAMERA, 5, 30, 12),
    clockComparison(CAMERA, 6, 40, 13, { replaces: [5] }),
  ];
  const seqs = (found: ClockPoint[]) => found.map(({ seq }) => seq);

  it('of a camera: the same moment measured anew, and what a later one names, no longer count', () =>
    expect(seqs(cameraPoints(list, CAMERA.camera))).toEqual([4, 6]));
  it('of another camera: none', () => expect(cameraPoints(list, 'another')).toEqual([]));
  it('of a log: its own, and those of no log by name', () => {
    expect(seqs(logPoints(list, 'e5' as EvidenceId))).toEqual([2, 3]);
    expect(seqs(logPoints(list, 'e6' as EvidenceId))).toEqual([2]);
  });
  it('leave out one whose clock went back, since no line leads through both', () => {
    const back = [clockComparison(UNIT, 1, 0, 0), clockComparison(UNIT, 2, 30, 3600)];
    expect(seqs(logPoints(back, 'e5' as EvidenceId))).toEqual([1]);
  });
});

describe('a unit log', () => {
  const read = log([0, 1, 2, 3], { 'return-air': [36, 36, 36, 36] });

  it('without comparisons is left as it is', () => expect(correctLog(read, [])).toBe(read));

  it('compared once moves as a whole', () => {
    const right = correctLog(read, points([0, -90]));
    expect([...right.times]).toEqual([...read.times].map((at) => at - 90_000));
    expect(right.addedSeconds).toBe(-90);
  });

  it('compared twice follows the drift, and says by which comparisons', () => {
    const [first = 0, , , last = 0] = read.times;
    const clock = [
      { at: first + 60_000, addSeconds: 60, uncertaintySeconds: 1, seq: 3 },
      { at: last + 120_000, addSeconds: 120, uncertaintySeconds: 1, seq: 9 },
    ];
    const right = correctLog(read, clock);
    expect([...right.times].map((at, i) => (at - (read.times.at(i) ?? 0)) / 1000)).toEqual([
      60, 80, 100, 120,
    ]);
    expect(right.addedSeconds).toBe(90);
    expect(right.clock).toEqual(clock);
    expect(read.addedSeconds).toBe(0);
  });
});

describe('the times of photos', () => {
  const fast = (taken: Parameters<typeof photos>[0], clocks = [clockComparison(CAMERA, 7, 0, -1200)]) => {
    const before: RecordState = { ...state(photos(taken)), clocks };
    const after = correctPhotoTimes(before);
    return { before: before.evidence[0]?.time, after: after.evidence[0]?.time };
  };

  it.each([
    ['by a stated offset', { offset: true }, 3],
    ['in the zone of the place', { offset: false }, 3],
    ['beside an old fix, whose age no longer counts', { offset: true, fix: 400 }, 3],
  ])('%s are corrected, and show it', (_, taken, uncertaintySeconds) => {
    const { before, after } = fast({ minutes: 30, fast: 1200, ...taken });
    expect(before).toMatchObject({ instant: '2026-07-14T12:50:00.000Z' });
    expect(after).toMatchObject({
      instant: '2026-07-14T12:30:00.000Z',
      uncertaintySeconds,
      correction: { addedSeconds: -1200, comparedAt: 7 },
      stated: before?.is === 'known' ? before.stated : '',
    });
  });

  it.each<[string, Parameters<typeof photos>[0]]>([
    ['satellite time', { minutes: 30, fast: 1200, fix: 0 }],
    ['a time that a person said', { minutes: 30, time: { is: 'none', why: 'of a test' } }],
    ['a photo of another camera', { minutes: 30, fast: 1200, camera: 'M-2' }],
    ['a photo whose camera has no name', { minutes: 30, fast: 1200, camera: null }],
  ])('%s stays', (_, taken) => {
    const { before, after } = fast(taken);
    expect(after).toEqual(before);
  });

  it('that were found to be right are left alone', () => {
    const { before, after } = fast({ minutes: 30 }, [clockComparison(CAMERA, 7, 0, 0)]);
    expect(after).toEqual(before);
  });

  it('are corrected once, however often', () => {
    const once = correctPhotoTimes({
      ...state(photos({ minutes: 30, fast: 1200 })),
      clocks: [clockComparison(CAMERA, 7, 0, -1200)],
    });
    expect(correctPhotoTimes(once)).toEqual(once);
  });
});

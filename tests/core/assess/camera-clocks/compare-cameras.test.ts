import { describe, expect, it } from 'vitest';
import {
  type CameraClock,
  compareCameraClocks,
} from '../../../../src/core/assess/camera-clocks/compare-cameras.js';
import { MOMENT, type PhotoFields, photos } from './photos.js';

const clocksOf = (...list: PhotoFields[]) => compareCameraClocks({ evidence: photos(...list) });
const every = (count: number, more: (i: number) => Partial<PhotoFields>): PhotoFields[] =>
  Array.from({ length: count }, (_, i) => ({ minutes: i * 60, fix: 0, ...more(i) }));

describe('a camera’s clock against satellite time', () => {
  it.each<[string, PhotoFields[], Partial<CameraClock>]>([
    ['right', every(5, () => ({})), { verdict: 'right', medianSeconds: 0, spreadSeconds: 0, drifts: false }],
    ['20 minutes fast', every(5, () => ({ fast: 1200 })), { verdict: 'off', medianSeconds: -1200 }],
    ['3 minutes slow', every(5, () => ({ fast: -180 })), { verdict: 'off', medianSeconds: 180 }],
    ['a year behind', every(3, () => ({ fast: -31_536_000 })), { verdict: 'off', medianSeconds: 31_536_000 }],
    [
      'right, with fixes of all ages on a few photos',
      every(7, (i) => ({ fix: i < 3 ? i * 90 : 1 })),
      { verdict: 'right', medianSeconds: -1 },
    ],
    ['two photos alone', every(2, () => ({ fast: 1200 })), { verdict: 'too-few' }],
    [
      'two phones of one model, one of them off',
      every(6, (i) => ({ fast: i % 2 === 0 ? 0 : 600 })),
      { verdict: 'unsteady' },
    ],
    // Without an offset the whole quarters of an hour may be the zone: 7 h 05 min is five minutes off.
    [
      'no offset stated, five minutes fast',
      every(4, () => ({ offset: false, fast: 300 })),
      { verdict: 'off', medianSeconds: -300 },
    ],
    ['no offset stated, right', every(4, () => ({ offset: false })), { verdict: 'right', medianSeconds: 0 }],
  ])('%s', (_, list, is) => {
    const [clock, none] = clocksOf(...list);
    expect(clock).toMatchObject(is);
    expect(none).toBeUndefined();
  });

  it('that drifts is measured in both halves of the trip', () => {
    // Four seconds more with every hour: −60, −64, −68, −72 and −76 … −88; medians and deviations by hand.
    const [clock] = clocksOf(...every(8, (i) => ({ fast: 60 + i * 4 })));
    expect(clock).toMatchObject({ verdict: 'off', drifts: true, driftSeconds: -16, spreadSeconds: 4 });
    expect(clock?.points).toEqual([
      { at: MOMENT + 90 * 60_000, addSeconds: -66, uncertaintySeconds: 4 },
      { at: MOMENT + 330 * 60_000, addSeconds: -82, uncertaintySeconds: 4 },
    ]);
  });

  it('that was set on the way is not said to drift, and nothing is corrected by it', () => {
    const [clock] = clocksOf(...every(8, (i) => ({ fast: i < 4 ? 0 : 600 })));
    expect(clock).toMatchObject({ verdict: 'unsteady', drifts: false, driftSeconds: -600 });
  });

  it('that changes by less than its spread does not drift', () => {
    const [clock] = clocksOf(...every(8, (i) => ({ fast: 60 + (i % 2) * 8 + (i > 3 ? 2 : 0) })));
    expect(clock?.drifts).toBe(false);
    expect(clock?.points).toHaveLength(1);
  });

  it('is judged camera by camera; a photo whose camera has no name, or states one time only, is no comparison', () => {
    const clocks = clocksOf(
      ...every(3, () => ({ camera: 'M-1' })),
      ...every(3, () => ({ camera: 'M-2', fast: 60 })),
      ...every(3, () => ({ camera: null, fast: 60 })),
      { minutes: 0, camera: 'M-3' },
    );
    expect(clocks.map(({ camera, verdict }) => [camera, verdict])).toEqual([
      ['Invented M-1', 'right'],
      ['Invented M-2', 'off'],
    ]);
  });
});

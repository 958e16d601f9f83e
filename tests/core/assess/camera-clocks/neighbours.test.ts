import { describe, expect, it } from 'vitest';
import { reconcileByNeighbours } from '../../../../src/core/assess/camera-clocks/neighbours.js';
import { toInstant, zone } from '../../../../src/core/model/time.js';
import { timeInZone } from '../../../../src/intake/time/event-time.js';
import { state } from '../made.js';
import { type PhotoFields, photos } from './photos.js';

type Shot = [name: string, time: string];

/** Photos of one camera: a local time in the zone as collecting reads it, or a time by satellite (ending in Z). */
function roll(zoneName: string, shots: readonly Shot[], camera = 'M-1') {
  const here = zone.parse(zoneName);
  return photos(
    ...shots.map(([name, text]): PhotoFields => {
      if (text.endsWith('Z')) {
        const instant = toInstant(Date.parse(text));
        const time = { is: 'known', instant, zone: here, basis: 'gps', uncertaintySeconds: 1 } as const;
        return { name, camera, minutes: 0, time };
      }
      const { time, flags } = timeInZone(Date.parse(`${text}Z`), here, 'place-zone', 1);
      return { name, camera, minutes: 0, time, flags };
    }),
  );
}

function settled(zoneName: string, shots: readonly Shot[]) {
  return reconcileByNeighbours(state(roll(zoneName, shots))).evidence.map(({ time }) =>
    time.is === 'known' ? [time.instant.slice(5, 16), time.uncertaintySeconds] : [],
  );
}

// Changes of the clock in 2026 by the IANA database, worked by hand:
// Chicago Nov 1, 02:00 −05:00 back to 01:00 −06:00, Mar 8, 02:00 −06:00 on to 03:00 −05:00;
// Lord Howe Apr 5, 02:00 +11:00 back to 01:30 +10:30; Santiago Apr 4, 24:00 −03:00 back to 23:00 −04:00,
// Sep 5, 24:00 −04:00 on to Sep 6, 01:00 −03:00.
describe('a local time in doubt is settled by the photos before and after it', () => {
  it.each<[string, string, Shot[], number, [string, number]]>([
    [
      'the first pass: the next one, by satellite, is still of it',
      'America/Chicago',
      [
        ['IMG_1.jpg', '2026-11-01T01:30:00'],
        ['IMG_2.jpg', '2026-11-01T06:40:00Z'],
      ],
      0,
      ['11-01T06:30', 1],
    ],
    [
      'the second pass: the one before was later than the first',
      'America/Chicago',
      [
        ['IMG_1.jpg', '2026-11-01T06:50:00Z'],
        ['IMG_2.jpg', '2026-11-01T01:30:00'],
      ],
      1,
      ['11-01T07:30', 1],
    ],
    [
      'a clock that goes back between two photos shows by itself which is which: the earlier',
      'America/Chicago',
      [
        ['IMG_1.jpg', '2026-11-01T01:50:00'],
        ['IMG_2.jpg', '2026-11-01T01:10:00'],
      ],
      0,
      ['11-01T06:50', 1],
    ],
    [
      '… and the later',
      'America/Chicago',
      [
        ['IMG_1.jpg', '2026-11-01T01:50:00'],
        ['IMG_2.jpg', '2026-11-01T01:10:00'],
      ],
      1,
      ['11-01T07:10', 1],
    ],
    [
      'half an hour in the southern autumn',
      'Australia/Lord_Howe',
      [
        ['P7.jpg', '2026-04-04T15:05:00Z'],
        ['P8.jpg', '2026-04-05T01:45:00'],
      ],
      1,
      ['04-04T15:15', 1],
    ],
    [
      'across midnight',
      'America/Santiago',
      [
        ['P7.jpg', '2026-04-04T23:10:00'],
        ['P8.jpg', '2026-04-05T02:30:00Z'],
      ],
      0,
      ['04-05T02:10', 1],
    ],
    [
      'the hour that was left out: a clock that was not yet put forward',
      'America/Chicago',
      [
        ['IMG_1.jpg', '2026-03-08T08:20:00Z'],
        ['IMG_2.jpg', '2026-03-08T02:30:00'],
      ],
      1,
      ['03-08T08:30', 1],
    ],
    [
      'the hour that was left out: a clock that was put forward too early',
      'America/Chicago',
      [
        ['IMG_1.jpg', '2026-03-08T02:30:00'],
        ['IMG_2.jpg', '2026-03-08T07:40:00Z'],
      ],
      0,
      ['03-08T07:30', 1],
    ],
    [
      'the hour that was left out at midnight',
      'America/Santiago',
      [
        ['IMG_1.jpg', '2026-09-06T04:10:00Z'],
        ['IMG_2.jpg', '2026-09-06T00:20:00'],
      ],
      1,
      ['09-06T04:20', 1],
    ],
  ])('%s (%s)', (_, zoneName, shots, index, is) => {
    expect(settled(zoneName, shots)[index]).toEqual(is);
  });

  it('keeps the flag and says by which photos', () => {
    const { evidence } = reconcileByNeighbours(
      state(
        roll('America/Chicago', [
          ['IMG_1.jpg', '2026-11-01T06:50:00Z'],
          ['IMG_2.jpg', '2026-11-01T01:30:00'],
        ]),
      ),
    );
    const [flag] = evidence[1] !== undefined && 'flags' in evidence[1] ? evidence[1].flags : [];
    expect(flag?.is).toBe('time-happened-twice');
    expect(flag?.detail).toMatch(/settled as 2026-11-01T07:30:00\.000Z by the order of its neighbours e1$/);
  });
});

describe('a local time stays in doubt', () => {
  const doubt = (shots: Shot[], index = 0, zoneName = 'America/Chicago') => {
    const before = state(roll(zoneName, shots));
    expect(reconcileByNeighbours(before).evidence[index]?.time).toEqual(before.evidence[index]?.time);
  };
  it.each<[string, Shot[], number]>([
    ['alone', [['IMG_1.jpg', '2026-11-01T01:30:00']], 0],
    [
      'when both passes fit between its neighbours',
      [
        ['IMG_1.jpg', '2026-11-01T00:30:00'],
        ['IMG_2.jpg', '2026-11-01T01:30:00'],
        ['IMG_3.jpg', '2026-11-01T03:30:00'],
      ],
      1,
    ],
    [
      'when names count by the clock and not by themselves',
      [
        ['20261101_015000.jpg', '2026-11-01T01:50:00'],
        ['20261101_011000.jpg', '2026-11-01T01:10:00'],
      ],
      1,
    ],
    [
      'when the numbers belong to other folders',
      [
        ['a/IMG_1.jpg', '2026-11-01T06:50:00Z'],
        ['b/IMG_2.jpg', '2026-11-01T01:30:00'],
      ],
      1,
    ],
    [
      'when the known times do not follow the numbers',
      [
        ['IMG_1.jpg', '2026-11-01T18:00:00Z'],
        ['IMG_2.jpg', '2026-11-01T01:30:00'],
        ['IMG_3.jpg', '2026-11-01T06:40:00Z'],
      ],
      1,
    ],
    [
      'when neither pass fits',
      [
        ['IMG_1.jpg', '2026-11-01T12:00:00Z'],
        ['IMG_2.jpg', '2026-11-01T01:30:00'],
      ],
      1,
    ],
  ])('%s', (_, shots, index) => doubt(shots, index));

  it('never in a zone without daylight saving', () => {
    expect(settled('America/Phoenix', [['IMG_1.jpg', '2026-11-01T01:30:00']])).toEqual([['11-01T08:30', 1]]);
  });
});

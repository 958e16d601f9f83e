import { describe, expect, it } from 'vitest';
import { readMilestones } from '../../../src/core/assess/milestones.js';
import { recordedDoors } from '../../../src/core/assess/temperature/recorded-doors.js';
import { transitWindowBetween, transitWindowOf } from '../../../src/core/assess/transit-window.js';
import type { EventName } from '../../../src/core/model/evidence.js';
import type { WindowBound } from '../../../src/core/model/results.js';
import { at, DAY_START, HOUR, items, state } from './made.js';

const LOADED = 'load-1';
const DROP = 'drop-1';
type Told = [EventName, number, string?];

const event = ([name, hour, stop]: Told) =>
  ({
    kind: 'event',
    event: name,
    time: at(hour),
    ...(stop === undefined ? {} : { place: { stop } }),
  }) as const;

const PLANNED = {
  stops: [
    { id: LOADED, does: 'load' as const, place: 'Cooler A', zone: 'UTC', planned: '2026-07-14T12:00' },
    { id: DROP, does: 'unload' as const, place: 'Warehouse B', zone: 'UTC', planned: '2026-07-16T11:00' },
  ],
};

const read = (told: Told[], plan = {}, now = 1000) =>
  readMilestones(state(items(...told.map(event)), plan), DAY_START + now * HOUR);

type Bound = [hour: number, basis: WindowBound['basis']];
const bound = ({ at: time, basis }: WindowBound): Bound => [(time - DAY_START) / HOUR, basis];

describe('the transit window', () => {
  it.each<[string, Told[], Bound, Bound]>([
    [
      'doors to doors',
      [
        ['doors-closed', 2, LOADED],
        ['departed', 3, LOADED],
        ['arrived', 40, DROP],
        ['doors-opened', 41, DROP],
      ],
      [2, 'doors-closed'],
      [41, 'doors-opened'],
    ],
    [
      'departure and arrival',
      [
        ['departed', 3],
        ['arrived', 40],
      ],
      [3, 'departed'],
      [40, 'arrived'],
    ],
    [
      'the end of loading, and a refusal',
      [
        ['loading-ended', 1],
        ['refused', 44],
      ],
      [1, 'loading-ended'],
      [44, 'refused'],
    ],
    [
      'doors that opened on the way, in a trip of 60 h',
      [
        ['doors-closed', 2],
        ['doors-opened', 33],
        ['arrived', 62, DROP],
        ['doors-opened', 63, DROP],
      ],
      [2, 'doors-closed'],
      [63, 'doors-opened'],
    ],
    [
      'doors that opened and closed on the way, without an arrival',
      [
        ['doors-closed', 2],
        ['doors-opened', 33],
        ['doors-closed', 34],
        ['unloaded', 62],
      ],
      [2, 'doors-closed'],
      [62, 'unloaded'],
    ],
    [
      'doors that opened on the way, long before unloading',
      [
        ['departed', 2],
        ['doors-opened', 33],
        ['unloading-began', 62],
      ],
      [2, 'departed'],
      [62, 'unloading-began'],
    ],
    [
      'doors without a stop, opened after the arrival',
      [
        ['departed', 2],
        ['arrived', 60],
        ['doors-opened', 61],
      ],
      [2, 'departed'],
      [61, 'doors-opened'],
    ],
    [
      'doors without a stop and nothing after them',
      [
        ['departed', 2],
        ['doors-opened', 61],
      ],
      [2, 'departed'],
      [61, 'doors-opened'],
    ],
  ])('%s', (_, told, from, to) => {
    const window = transitWindowOf(read(told));
    expect(window && [bound(window.from), bound(window.to)]).toEqual([from, to]);
  });

  it('is bounded by planned times where no event is known, and says so', () => {
    const window = transitWindowOf(read([], PLANNED));
    expect(window && [bound(window.from), bound(window.to)]).toEqual([
      [1, 'planned'],
      [48, 'planned'],
    ]);
  });

  it('reaches to now while the planned end is ahead', () => {
    const window = transitWindowOf(read([['departed', 2]], PLANNED, 10));
    expect(window && bound(window.to)).toEqual([10, 'under-way']);
  });

  it('is not known without events and planned times, or with one end alone', () => {
    expect(transitWindowOf(read([]))).toBeUndefined();
    expect(transitWindowOf(read([['departed', 2]]))).toBeUndefined();
    expect(transitWindowOf(read([['arrived', 2, DROP]]))).toBeUndefined();
  });

  it('opens at a signature only when somebody stated its time', () => {
    const signed = (basis: 'typed' | 'offset') =>
      ({
        kind: 'document',
        subject: { is: 'bill-of-lading', sure: 'confirmed' },
        time: { ...at(1), basis },
      }) as const;
    const window = (basis: 'typed' | 'offset') =>
      transitWindowOf(
        readMilestones(state(items(signed(basis), event(['arrived', 40, DROP]))), DAY_START + 99 * HOUR),
      );
    expect(window('typed')?.from.basis).toBe('bill-signed');
    expect(window('offset')).toBeUndefined();
  });

  it('is each line’s own, from its stop to its stop', () => {
    const told: Told[] = [
      ['doors-closed', 2, LOADED],
      ['doors-opened', 20, 'drop-0'],
      ['doors-closed', 21, 'drop-0'],
      ['doors-opened', 41, DROP],
    ];
    const stop = (id: string, does: 'load' | 'unload') => ({ id, does, place: id, zone: 'UTC' });
    const milestones = read(told, {
      stops: [stop(LOADED, 'load'), stop('drop-0', 'unload'), stop(DROP, 'unload')],
    });
    const window = (to: string) => transitWindowBetween(milestones, LOADED, to);
    expect(window('drop-0')?.to).toMatchObject({ at: DAY_START + 20 * HOUR });
    expect(window(DROP)?.to).toMatchObject({ at: DAY_START + 41 * HOUR });
  });

  it('keeps doors that opened on the way among those that stood open', () => {
    const doors = recordedDoors(
      read([
        ['doors-closed', 2],
        ['doors-opened', 33],
        ['doors-closed', 34],
        ['arrived', 62],
      ]),
    );
    expect(doors.map(({ from, to }) => (to - from) / HOUR)).toEqual([1]);
  });
});

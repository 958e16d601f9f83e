import { describe, expect, it } from 'vitest';
import { delivery as deliveryFacts } from '../../../src/core/model/delivery.js';
import { logDeliveryFlags, stopWindowFlags } from '../../../src/core/model/delivery-flags.js';

/** An invented delivery with stops in two zones. */
const delivery = deliveryFacts.parse({
  delivery: 'T-1',
  parties: { carrier: { name: 'Invented Haulage' } },
  equipment: { trailer: { number: '118' } },
  stops: [
    {
      id: 'load-1',
      does: 'load',
      place: 'Nowhere Field',
      zone: 'America/Phoenix',
      planned: '2026-07-14T04:00',
    },
    {
      id: 'drop-1',
      does: 'unload',
      place: 'Paper Moon',
      zone: 'America/Chicago',
      planned: '2026-07-16T06:00',
    },
  ],
  lines: [{ id: 'romaine', goods: 'lettuce-romaine', from: 'load-1', to: 'drop-1' }],
});
const at = (text: string) => Date.parse(text);

describe('flags that rest on the delivery', () => {
  it.each([
    [
      'its own trailer, in its time',
      { from: '2026-07-14T12:00Z', to: '2026-07-15T12:00Z', stated: { trailer: 'T-118' } },
      [],
    ],
    [
      'another trailer',
      { from: '2026-07-14T12:00Z', to: '2026-07-15T12:00Z', stated: { trailer: '119' } },
      ['other-trailer'],
    ],
    ['no number', { from: '2026-07-14T12:00Z', to: '2026-07-15T12:00Z' }, []],
    ['a week later', { from: '2026-07-21T12:00Z', to: '2026-07-22T12:00Z' }, ['outside-delivery-time']],
  ])('a log of %s', (_, { from, to, ...rest }, flags) =>
    expect(logDeliveryFlags({ from: at(from), to: at(to), ...rest }, delivery).map(({ is }) => is)).toEqual(
      flags,
    ),
  );

  it('a time more than a day from the plan of its stop', () => {
    const [stop] = delivery.stops;
    if (stop === undefined) throw new Error('no stop');
    expect(stopWindowFlags(stop, at('2026-07-15T10:00Z'))).toEqual([]);
    expect(stopWindowFlags(stop, at('2026-07-16T11:00Z'))).toMatchObject([
      { detail: '48 hours after the planned time of load-1' },
    ]);
    expect(stopWindowFlags(stop, undefined)).toEqual([]);
  });
});

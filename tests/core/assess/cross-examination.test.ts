import { describe, expect, it } from 'vitest';
import { assess } from '../../../src/core/assess/assess.js';
import type { DeliveryInput } from '../../../src/core/model/delivery.js';
import { omitUndefined } from '../../../src/core/model/omit-undefined.js';
import type { Finding } from '../../../src/core/model/results.js';
import { at, HASH, instantAt, items, log, rulesOf, state } from './made.js';

/** Loads that were used to turn findings round, each with what a careful expert says of its pulps. */

const hours = Array.from({ length: 4 * 40 + 1 }, (_, i) => i / 4);
type Pulp = readonly [fahrenheit: number, position?: 'nose' | 'middle' | 'tail', instrument?: string];

function found(
  loading: readonly Pulp[],
  delivery: readonly Pulp[],
  { air = 36, goods = 'lettuce-romaine', setPoint = '36 °F' } = {},
): Finding[] {
  const pulp = ([value, position, instrument]: Pulp, stop: string, hour: number) =>
    ({
      kind: 'pulp',
      temperature: { value, unit: '°F' },
      from: 'driver',
      place: { stop, ...omitUndefined({ position }) },
      time: at(hour),
      ...omitUndefined({ instrument }),
    }) as const;
  const lines: DeliveryInput['lines'] = [
    {
      id: 'a',
      goods,
      from: 'load-1',
      to: 'drop-1',
      pallets: 12,
      instruction: { setPoint, tolerance: '2 °F' },
    },
  ];
  return assess({
    state: state(
      items(
        { kind: 'event', event: 'doors-closed', place: { stop: 'load-1' }, time: at(0) },
        { kind: 'event', event: 'departed', place: { stop: 'load-1' }, time: at(0.2) },
        { kind: 'event', event: 'doors-opened', place: { stop: 'drop-1' }, time: at(40) },
        ...loading.map((one) => pulp(one, 'load-1', -0.5)),
        ...delivery.map((one) => pulp(one, 'drop-1', 40.5)),
      ),
      { lines },
    ),
    logs: [log(hours, { 'return-air': hours.map(() => air) })],
    ruleSet: { ruleSet: rulesOf({ needs: { event: 'arrived' } }), sha256: HASH },
    at: instantAt(60),
  }).findings;
}
const sides = (all: readonly Finding[], about: RegExp) =>
  Object.fromEntries(all.filter(({ id }) => about.test(id)).map(({ id, weighs }) => [id, weighs]));
const PULPS = /pulps|warm|arrival|freez/;

describe('what is concluded from pulps survives cross-examination', () => {
  it('36.0, 36.2 and 38.1 at loading, 55.0 six times at delivery: nothing for the carrier, and the rise against it', () => {
    const all = found(
      [[36], [36.2], [38.1]],
      Array.from({ length: 6 }, (): Pulp => [55]),
    );
    expect(sides(all, /pulps|warm|arrival/)).toEqual({
      'pulps-at-loading-undecided': 'open',
      'pulps-at-delivery-above-band': 'hurts',
      'warmed-on-the-way': 'hurts',
      'arrival-fits-neither': 'open',
    });
  });

  it('34.3 against a limit of 34.0 with a thermometer good to 2 °F decides nothing, on either side', () => {
    const all = found([[34.3]], [[34.3]]);
    const weighs = Object.values(sides(all, /pulps|warm|arrival/));
    expect(new Set(weighs)).toEqual(new Set(['open']));
  });

  it('a tail that was loaded right and arrived at 43.1 is nothing for the carrier', () => {
    const all = found([[37.6, 'tail', 'P-7']], [[43.1, 'tail', 'P-7']]);
    const arrival = all.filter(({ id }) => id.startsWith('arrival-'));
    expect(arrival.length).toBeGreaterThan(0);
    for (const { weighs } of arrival) expect(weighs).not.toBe('helps');
  });

  it('goods a little warm at both ends, as they could have come had they been loaded right: does not discriminate', () => {
    const all = found([[41, 'nose', 'P-7']], [[40.5, 'nose', 'P-7']]);
    expect(sides(all, /arrival/)).toEqual({ 'arrival-does-not-discriminate': 'open' });
  });

  it('celery that the bill itself had carried at 29 °F: freezing is named, and the instruction weighed, not the carrier', () => {
    const all = found([[36, 'nose', 'P-7']], [[29.5, 'nose', 'P-7']], {
      goods: 'celery',
      setPoint: '29 °F',
      air: 29,
    });
    expect(sides(all, PULPS)).toMatchObject({
      'instruction-below-freezing': 'helps',
      'pulps-at-delivery-frozen': 'open',
      'air-below-freezing-point': 'open',
      'pulps-at-loading-above-band': 'open',
    });
    expect(Object.values(sides(all, /pulps|warm|arrival|air-below/))).not.toContain('hurts');
  });
});

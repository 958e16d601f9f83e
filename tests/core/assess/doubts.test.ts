import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { doubtsAbout, Kin, type KnownReading, type TimeGiven } from '../../../src/core/assess/doubts.js';
import { type Delivery, delivery } from '../../../src/core/model/delivery.js';
import { type ReadingBody, reading } from '../../../src/core/model/evidence.js';
import '../../properties.js';

const trip = (planned: boolean): Delivery =>
  delivery.parse({
    delivery: '4711',
    parties: { carrier: { name: 'Example Haulage' } },
    equipment: { trailer: { number: 'T-7' } },
    stops: [
      {
        id: 'load-1',
        does: 'load',
        place: 'Esparto Flats',
        zone: 'America/Phoenix',
        ...(planned ? { planned: '2026-07-14T04:00' } : {}),
      },
      {
        id: 'drop-1',
        does: 'unload',
        place: 'Mock Elms',
        zone: 'America/Chicago',
        ...(planned ? { planned: '2026-07-16T06:00' } : {}),
      },
    ],
    lines: [
      {
        id: 'romaine',
        goods: 'lettuce-romaine',
        from: 'load-1',
        to: 'drop-1',
        instruction: { setPoint: '36 °F', tolerance: '2 °F' },
      },
      { id: 'peas', goods: 'frozen peas', from: 'load-1', to: 'drop-1', instruction: { setPoint: '-10 °F' } },
      { id: 'celery', goods: 'celery', from: 'load-1', to: 'drop-1' },
    ],
  });

const known = (at: string) => ({
  is: 'known',
  instant: new Date(at).toISOString(),
  zone: 'America/Phoenix',
  basis: 'typed',
  uncertaintySeconds: 60,
});
const made = (body: object, at = '2026-07-14T04:10-07:00'): ReadingBody =>
  reading.parse({ evidence: 'e1', source: { is: 'typed' }, time: known(at), ...body });
const pulp = (value: number, unit: '°F' | '°C', line = 'romaine', stop = 'load-1') =>
  made({ kind: 'pulp', temperature: { value, unit }, line, place: { stop } });
const event = (name: string, stop?: string, at?: string) =>
  made({ kind: 'event', event: name, ...(stop === undefined ? {} : { place: { stop } }) }, at);

const names = (
  candidate: ReadingBody,
  readings: readonly KnownReading[] = [],
  { given = 'typed', now = '2026-07-14T06:00-07:00', planned = true } = {} as {
    given?: TimeGiven;
    now?: string;
    planned?: boolean;
  },
) => doubtsAbout(candidate, given, new Kin(trip(planned), readings, Date.parse(now))).map(({ is }) => is);

describe('a temperature', () => {
  it.each([
    ['39 °C where 36 ± 2 °F is instructed', pulp(39, '°C'), ['other-unit']],
    ['4 °F for 4 °C', pulp(4, '°F'), ['other-unit']],
    ['−10 °C where −10 °F is instructed', pulp(-10, '°C', 'peas'), ['other-unit']],
    ['78 °F, 40 °F above the range', pulp(78, '°F'), ['far-from-instruction']],
    ['−6 °F, 40 °F below the range', pulp(-6, '°F'), ['far-from-instruction']],
    ['77.9 °F: warm, and no mistake of typing', pulp(77.9, '°F'), []],
    ['63 °F: field heat', pulp(63, '°F'), []],
    ['34.2 °F', pulp(34.2, '°F'), []],
    ['a line without an instruction', pulp(90, '°F', 'celery'), []],
    [
      'a set point of a frozen load among chilled ones',
      made({ kind: 'set-point', shownBy: 'display', temperature: { value: -10, unit: '°F' } }),
      [],
    ],
    [
      'the set point on the display of a unit check',
      made({ kind: 'round', setPoint: { value: 36, unit: '°C' } }),
      ['other-unit'],
    ],
  ])('%s', (_, candidate, expected) => expect(names(candidate)).toEqual(expected));

  it('far from the other pulps of its line and stop alone', () => {
    const others = [38, 39, 40].map((value) => pulp(value, '°F', 'celery'));
    expect(names(pulp(90, '°F', 'celery'), others)).toEqual(['far-from-neighbours']);
    expect(names(pulp(90, '°F', 'celery', 'drop-1'), others)).toEqual([]);
    expect(names(pulp(75, '°F', 'celery'), others)).toEqual([]);
  });

  it('near its instruction is not doubted for one odd neighbour', () =>
    expect(names(pulp(42, '°F'), [pulp(39, '°C')])).toEqual([]));
  it('far from both is doubted once', () => {
    expect(names(pulp(76, '°F'), [pulp(34, '°F')])).toEqual(['far-from-neighbours']);
    expect(names(pulp(39, '°C'), [pulp(34, '°F')])).toEqual(['other-unit']);
  });
});

describe('a time', () => {
  const at = (when: string) => made({ kind: 'seal', number: '1', state: 'intact' }, when);
  it.each([
    ['a month early', '2026-06-14T04:10-07:00', ['outside-delivery']],
    ['three days early', '2026-07-11T04:00-07:00', ['outside-delivery']],
    ['two days early', '2026-07-12T04:00-07:00', []],
    ['two days late, as trucks are', '2026-07-18T06:00-05:00', []],
    ['three days late', '2026-07-19T06:00-05:00', ['outside-delivery']],
  ])('%s', (_, when, expected) => expect(names(at(when))).toEqual(expected));

  it('of a late truck is near once its arrival is recorded', () => {
    const arrival = event('arrived', 'drop-1', '2026-07-21T06:00-05:00');
    expect(names(arrival)).toEqual(['outside-delivery']);
    expect(names(at('2026-07-21T07:00-05:00'), [arrival])).toEqual([]);
  });

  it('of words about the load lies weeks ahead and years after', () => {
    const call = (when: string) =>
      names(made({ kind: 'contact', with: 'insurer', how: 'call', about: 'x' }, when));
    expect(call('2026-06-14T04:10-07:00')).toEqual([]);
    expect(call('2028-06-14T04:10-07:00')).toEqual([]);
    expect(call('2025-07-14T04:10-07:00')).toEqual(['outside-delivery']);
  });

  it.each<[string, TimeGiven, string, string[]]>([
    ['left out months after the delivery', 'left-out', '2026-11-30T12:00Z', ['no-time-given']],
    ['left out under way', 'left-out', '2026-07-15T12:00Z', []],
    ['left out within a day of the last', 'left-out', '2026-07-17T10:59Z', []],
    ['said to be now months after the delivery', 'now', '2026-11-30T12:00Z', []],
  ])('%s', (_, given, now, expected) => {
    const candidate = made({ kind: 'seal', number: '1', state: 'intact' }, now);
    expect(names(candidate, [], { given, now })).toEqual(expected);
  });

  it('of a delivery without planned times has the recorded ones for kin', () => {
    const now = '2026-11-30T12:00Z';
    const candidate = made({ kind: 'seal', number: '1', state: 'intact' }, now);
    const options = { given: 'left-out', now, planned: false } as const;
    expect(names(candidate, [], options)).toEqual([]);
    expect(names(candidate, [pulp(36, '°F')], options)).toEqual(['no-time-given']);
  });
});

describe('an event', () => {
  it.each([
    ['that is there at its stop', event('arrived', 'drop-1'), ['recorded-before']],
    ['at another stop', event('arrived', 'load-1'), []],
    ['without a stop', event('arrived'), []],
    ['another one', event('doors-opened', 'drop-1'), []],
  ])('%s', (_, candidate, expected) =>
    expect(names(candidate, [event('arrived', 'drop-1', '2026-07-16T05:00-05:00')])).toEqual(expected),
  );
  it('of which a stop has many', () =>
    expect(names(event('stopped', 'drop-1'), [event('stopped', 'drop-1')])).toEqual([]));
});

it('no pulp between the lowest and highest instructed range is ever doubted', () =>
  fc.assert(
    fc.property(
      fc.double({ min: 34, max: 38, noNaN: true }),
      fc.array(fc.integer({ min: -40, max: 120 })),
      (value, others) => {
        expect(
          names(
            pulp(value, '°F'),
            others.map((other) => pulp(other, '°F')),
          ),
        ).toEqual([]);
      },
    ),
  ));

describe('an inspection', () => {
  const inspected = (at: string, stop = 'drop-1') =>
    made({ kind: 'inspection', lot: 'L-1', line: 'romaine', place: { stop } }, at);
  const arrived = event('arrived', 'drop-1', '2026-07-16T06:00-05:00');
  const disposed = event('disposed', 'drop-1', '2026-07-17T06:00-05:00');
  it.each([
    ['before the truck arrived', inspected('2026-07-16T05:59-05:00'), ['inspected-before-arrival']],
    ['between arrival and disposal', inspected('2026-07-16T10:00-05:00'), []],
    ['after the goods were disposed of', inspected('2026-07-17T06:01-05:00'), ['inspected-after-disposal']],
    ['at origin, before the arrival at the other end', inspected('2026-07-14T03:00-07:00', 'load-1'), []],
  ])('%s', (_, candidate, expected) => expect(names(candidate, [arrived, disposed])).toEqual(expected));

  it('where no arrival is recorded is not doubted', () =>
    expect(names(inspected('2026-07-16T05:59-05:00'))).toEqual([]));
});

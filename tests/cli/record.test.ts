import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type Yard, yard } from './a-delivery.js';

let here: Yard;
let delivery: string;
beforeAll(async () => {
  here = yard();
  delivery = await here.delivery();
});
afterAll(() => here.end());

const record = (...args: string[]) => here.dossier('record', ...args, '-d', 'delivery');
const last = () => here.entries(delivery).at(-1);

describe('record writes down', () => {
  it.each([
    [
      [
        'pulp',
        '34.2F',
        '--line',
        'romaine',
        '--stop',
        'load-1',
        '--position',
        'nose',
        '--at',
        '2026-07-14T04:10',
      ],
      {
        kind: 'pulp',
        temperature: { value: 34.2, unit: '°F' },
        from: 'driver',
        line: 'romaine',
        place: { stop: 'load-1', position: 'nose' },
        time: { is: 'known', instant: '2026-07-14T11:10:00.000Z', zone: 'America/Phoenix', basis: 'typed' },
      },
    ],
    [
      [
        'pulp',
        '1,5 °C',
        '--line',
        'celery',
        '--stop',
        'drop-1',
        '--from',
        'receiver',
        '--at',
        '2026-07-16T06:00',
      ],
      {
        temperature: { value: 1.5, unit: '°C' },
        from: 'receiver',
        time: { instant: '2026-07-16T11:00:00.000Z' },
      },
    ],
    [
      [
        'particular',
        'counted by',
        '--who',
        'shipper J. Ortiz',
        '--words',
        'SLC',
        '--stop',
        'load-1',
        '--at',
        'now',
      ],
      { kind: 'particular', of: 'counted-by', who: { party: 'shipper', name: 'J. Ortiz' }, words: 'SLC' },
    ],
    [
      [
        'particular',
        'count',
        '--how-many',
        '480 ctns',
        '--line',
        'romaine',
        '--stop',
        'drop-1',
        '--at',
        'now',
      ],
      { of: 'count', quantity: { amount: '480', unit: 'cartons' }, line: 'romaine' },
    ],
    [
      [
        ...['instrument', 'P-7', '--type', 'thermometer', '--serial', '0441', '--calibrated', '2026-05-01'],
        ...['--ice-before', '32.4F', '--certificate', 'C-12', '--stop', 'load-1', '--at', 'now'],
      ],
      {
        kind: 'instrument',
        name: 'P-7',
        type: 'thermometer',
        serial: '0441',
        calibrated: '2026-05-01',
        certificate: 'C-12',
        iceBefore: { value: 32.4, unit: '°F' },
      },
    ],
    [
      ['event', 'stopped', '--reason', 'hours of service', '--at', '2026-07-14T20:00', '--stop', 'load-1'],
      { event: 'stopped', reason: 'hours-of-service' },
    ],
    [
      ['set-point', '36F', '--stop', 'load-1', '--run', 'continuous', '--at', 'now'],
      { kind: 'set-point', temperature: { value: 36, unit: '°F' }, shownBy: 'display', run: 'continuous' },
    ],
    [
      ['check', '37F', '--set-point', '36F', '--fuel', '3/4', '--at', '2026-07-14T14:40-07:00'],
      {
        kind: 'round',
        boxAir: { value: 37, unit: '°F' },
        fuel: 0.75,
        time: { instant: '2026-07-14T21:40:00.000Z' },
      },
    ],
    [
      ['check', '--alarm', 'code 63', 'low fuel', '--stop', 'load-1', '--at', 'now'],
      { kind: 'round', alarms: ['code 63', 'low fuel'] },
    ],
    [
      ['seal', '4471908', '--state', 'applied', '--stop', 'load-1', '--at', 'now'],
      { kind: 'seal', number: '4471908', state: 'applied' },
    ],
    [
      ['bracing', 'load-bars', '--note', 'two behind the last row', '--stop', 'load-1', '--at', 'now'],
      { kind: 'bracing', device: 'load-bars', note: 'two behind the last row' },
    ],
    [
      ['event', 'doors-closed', '--stop', 'load-1', '--at', '2026-07-14T06:30'],
      { kind: 'event', event: 'doors-closed' },
    ],
    [
      ['contact', 'shipper', '--about', 'romaine pulps at 42 F', '--stop', 'load-1', '--at', 'now'],
      { kind: 'contact', with: 'shipper', how: 'call', about: 'romaine pulps at 42 F' },
    ],
    [
      ['statement', 'I was on the dock.', '--by', 'R. Vela', '--stop', 'load-1', '--at', 'now'],
      { kind: 'statement', text: 'I was on the dock.', by: 'R. Vela' },
    ],
  ])('%j', async (args, body) => {
    const before = here.entries(delivery).length;
    const { code, out } = await record(...args);
    expect(code).toBe(0);
    expect(out).toMatch(/^e\d+ {2}/);
    expect(here.entries(delivery)).toHaveLength(before + 1);
    expect(last()).toMatchObject({ type: 'reading-recorded', by: expect.any(String), body });
    expect(last()?.body.evidence).toBe(/^e\d+/.exec(out)?.[0]);
  });

  it('who enters it, apart from who saw it', async () => {
    await record(
      'seal',
      '1',
      '--state',
      'intact',
      '--stop',
      'drop-1',
      '--at',
      'now',
      '--by',
      'R. Vela',
      '--entered-by',
      'Office',
    );
    expect(last()).toMatchObject({ by: 'Office', body: { by: 'R. Vela' } });
  });

  it('and answers in JSON', async () => {
    const { out } = await record(
      'pulp',
      '34F',
      '--line',
      'romaine',
      '--stop',
      'load-1',
      '--at',
      'now',
      '--json',
    );
    expect(JSON.parse(out)).toMatchObject({
      evidence: last()?.body.evidence,
      said: expect.any(String),
      notices: [],
    });
  });
});

describe('record refuses, with the choices, and writes nothing', () => {
  const pulp = ['pulp', '34F', '--line', 'romaine', '--stop', 'load-1'];
  it.each([
    [
      'a line that is not on the bill',
      ['pulp', '34F', '--line', 'romain', '--stop', 'load-1'],
      /--line.*"romain".*\n.*romaine, celery/,
    ],
    [
      'a stop that is not on the way',
      ['pulp', '34F', '--stop', 'load1'],
      /--stop.*"load1".*\n.*load-1, drop-1/,
    ],
    [
      'a position that no load has',
      [...pulp, '--position', 'front'],
      /--position.*"front".*\n.*nose, middle, tail/,
    ],
    ['900 °F', ['pulp', '900F', '--stop', 'load-1'], /temperature.*"900F".*\n.*−112 to 185 °F/],
    ['a temperature without unit', ['pulp', '34', '--stop', 'load-1'], /34 is in °F or °C\n.*34F or 34C/],
    [
      'a time in one of two zones',
      ['pulp', '34F', '--at', '04:10'],
      /Phoenix or America\/Chicago\n.*--stop load-1 or --stop drop-1/,
    ],
    ['a time that is none', [...pulp, '--at', '25:10'], /--at: "25:10" is not a time\n.*14:05/],
    [
      'a time that did not happen',
      ['pulp', '34F', '--stop', 'drop-1', '--at', '2026-03-08T02:30'],
      /did not happen in America\/Chicago/,
    ],
    [
      'a time that happened twice',
      ['pulp', '34F', '--stop', 'drop-1', '--at', '2025-11-02T01:30'],
      /happened twice.*\n.*-05:00 or 2025-11-02T01:30:00-06:00/,
    ],
    [
      'a time that has not come',
      [...pulp, '--at', '2097-01-01T00:00'],
      /--at: "2097-01-01T00:00" has not come yet/,
    ],
    [
      'a hand that is not known',
      [...pulp, '--from', 'me'],
      /--from: "me".*\n.*driver, shipper, receiver, inspector, other/,
    ],
    [
      'a seal without its state',
      ['seal', '1', '--stop', 'load-1'],
      /--state: not told\n.*applied, intact, broken, removed/,
    ],
    [
      'a state that no seal has',
      ['seal', '1', '--state', 'fine', '--stop', 'load-1'],
      /--state: "fine".*\n.*applied, intact, broken, removed/,
    ],
    [
      'a device that is none',
      ['bracing', 'ropes', '--stop', 'load-1'],
      /device: "ropes".*\n.*air-bags, load-bars/,
    ],
    [
      'an event that is none',
      ['event', 'doors-shut', '--stop', 'load-1'],
      /event: "doors-shut".*\n.*doors-closed/,
    ],
    ['a particular of nothing known', ['particular', 'colour', '--words', 'x'], /no particular "colour"/],
    ['who counted without a person', ['particular', 'counted-by', '--words', 'x'], /--who: not told/],
    ['a count without a number', ['particular', 'count', '--words', 'x'], /quantity: not told/],
    ['an instrument of no type', ['instrument', 'P-7'], /type.*thermometer, recorder/s],
    [
      'a day that is none',
      ['instrument', 'P-7', '--type', 'sensor', '--calibrated', 'May'],
      /"May" is not a day/,
    ],
    ['a stop for a reason of no list', ['event', 'stopped', '--reason', 'lunch'], /no reason "lunch"/],
    [
      'a contact about nothing',
      ['contact', 'shipper', '--stop', 'load-1'],
      /--about: not told\n.*record contact --help/,
    ],
    [
      'a contact with nobody known',
      ['contact', 'mother', '--about', 'x', '--stop', 'load-1'],
      /with: "mother".*\n.*shipper, receiver, broker/,
    ],
    [
      'a statement about a topic that there is not',
      ['statement', 'I saw it.', '--about', 'weather', '--stop', 'load-1'],
      /--about: "weather".*\n.*trailer, unit, pulps, loading, dock-access/,
    ],
    ['an empty statement', ['statement', '', '--stop', 'load-1'], /text: not told/],
    [
      'a look that says nothing',
      ['check', '--stop', 'load-1'],
      /says nothing\n.*--set-point, --fuel or --alarm/,
    ],
    [
      'more than a tank',
      ['check', '--fuel', '9/8', '--stop', 'load-1'],
      /--fuel: "9\/8".*\n.*3\/4, 60% or 0\.6/,
    ],
  ])('%s', async (_, args, said) => {
    const before = here.entries(delivery);
    const { code, out, err } = await record(...args);
    expect(err).toMatch(said);
    expect(code).toBe(2);
    expect(out).toBe('');
    expect(here.entries(delivery)).toEqual(before);
  });

  it('outside of any delivery', async () => {
    const { code, err } = await here.dossier('record', 'pulp', '34F');
    expect(code).toBe(2);
    expect(err).toMatch(/no delivery folder here or above\n.*-d FOLDER/);
  });
});

describe('two commands at once', () => {
  it('lose no entry: one waits for the other', async () => {
    const before = here.entries(delivery).length;
    const temperatures = Array.from({ length: 5 }, (_, i) => `${34 + i / 10}F`);
    const ran = await Promise.all(
      temperatures.map((one) =>
        here.process(
          'record',
          'pulp',
          one,
          '--line',
          'romaine',
          '--stop',
          'load-1',
          '--at',
          'now',
          '-d',
          'delivery',
        ),
      ),
    );
    expect(ran.map(({ code, err }) => `${code} ${err}`)).toEqual(temperatures.map(() => '0 '));
    const added = here.entries(delivery).slice(before);
    const values = added.map(({ body }) => (body.temperature as { value: number }).value);
    expect(values.sort()).toEqual(temperatures.map(Number.parseFloat).sort());
    expect(new Set(added.map(({ body }) => body.evidence)).size).toBe(5);
    // The record opens again, and all of it counts.
    expect((await here.dossier('temps', 'delivery', '--json')).out).toContain('"count": ');
  });
});

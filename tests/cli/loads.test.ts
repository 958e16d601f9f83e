import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { type Yard, yard } from './a-delivery.js';

const FACTS = `delivery: TWO-ROOMS
parties: { carrier: { name: Copper Basin Carriers } }
equipment:
  tractor: { number: "7", axles: { wheelbase: 200 in, fifthWheel: 20 in } }
  trailer:
    number: T-118
    insideLength: 630 in
    axles: { kingpin: 36 in, group: 480 in }
    compartments: [{ id: front, bulkhead: 20 ft }, { id: rear }]
  empty: { steer: 11000 lb, drive: 13000 lb, trailer: 11000 lb }
  limits: { steer: 12000 lb, drive: 34000 lb, trailer: 34000 lb }
stops:
  - { id: load-1, does: load, place: Cooler A, zone: America/Phoenix, planned: 2026-07-14T04:00 }
  - { id: drop-1, does: unload, place: Omaha, zone: America/Chicago, planned: 2026-07-16T06:00 }
lines:
  - { id: corn, goods: "sweet corn, frozen", from: load-1, to: drop-1, pallets: 8, compartment: front, instruction: { setPoint: -10 °F } }
  - { id: celery, goods: celery, from: load-1, to: drop-1, pallets: 4, compartment: rear, instruction: { setPoint: 33 °F } }
`;

let here: Yard;
let delivery: string;
beforeEach(async () => {
  here = yard();
  delivery = await here.delivery('delivery', FACTS);
});
afterEach(() => here.end());

const last = () => here.entries(delivery).at(-1)?.body;
const AT = ['--stop', 'load-1', '--at', '2026-07-14T06:30'];
const record = (...args: string[]) => here.dossier('record', ...args, '-d', 'delivery');

describe('record, for loads beyond one box', () => {
  it.each<[string, string[], object]>([
    [
      'a set point of a compartment',
      ['set-point', '-10F', '--compartment', 'Front'],
      { place: { stop: 'load-1', compartment: 'front' } },
    ],
    [
      'a scale ticket',
      ['scale', '--steer', '11,840lb', '--drive', '33420 lb', '--ticket', '4471'],
      {
        kind: 'scale',
        steer: { value: 11_840, unit: 'lb' },
        drive: { value: 33_420, unit: 'lb' },
        ticket: '4471',
      },
    ],
    ['a gross weight', ['scale', '35.1t'], { kind: 'scale', gross: { value: 35.1, unit: 't' } }],
    [
      'a shock',
      [
        'shock',
        '5.2g',
        '--duration',
        '11ms',
        '--axis',
        'vertical',
        '--threshold',
        '3g',
        '--instrument',
        'SR-88',
      ],
      {
        kind: 'shock',
        what: 'shock',
        peak: { value: 5.2, unit: 'g' },
        milliseconds: 11,
        axis: 'vertical',
        threshold: { value: 3, unit: 'g' },
      },
    ],
    [
      'hard braking without a figure',
      ['shock', '--what', 'hard-braking'],
      { kind: 'shock', what: 'hard-braking' },
    ],
    [
      'pallets that lean',
      ['pallets', 'leaning', '--rows', '3-4', '--count', '2', '--position', 'middle'],
      { kind: 'pallets', state: 'leaning', rows: { from: 3, to: 4 }, count: 2 },
    ],
    [
      'rows with the weight of their pallets',
      ['pattern', 'straight', '--rows', '1-4', '--line', 'corn', '--pallet-weight', '1,650lb'],
      { kind: 'pattern', palletWeight: { value: 1650, unit: 'lb' } },
    ],
  ])('%s', async (_, args, body) => {
    const ran = await record(...args, ...AT);
    expect(ran.err).toBe('');
    expect(last()).toMatchObject(body);
  });

  it.each<[string, string[], string]>([
    [
      'a compartment that there is not',
      ['set-point', '-10F', '--compartment', 'middle'],
      'there is no compartment "middle"',
    ],
    ['a weight without a unit', ['scale', '--steer', '11840'], 'nothing says whether 11840 is in lb or kg'],
    ['a ticket that says no weight', ['scale'], 'a scale ticket that says no weight'],
    ['an axle group beyond sense', ['scale', '--steer', '1184000lb'], 'heavier than any axle group'],
    [
      'groups that are not the gross weight',
      ['scale', '9t', '--steer', '5t', '--drive', '15t', '--trailer', '14t'],
      'the axle groups add up to 34000 kg',
    ],
    [
      'a pallet beyond sense',
      ['pattern', 'straight', '--rows', '1', '--pallet-weight', '16500lb'],
      'heavier than a pallet can be',
    ],
    ['a shock without a unit', ['shock', '5.2'], 'nothing says in what unit 5.2 is'],
    ['a shock that no load has', ['shock', '5200g'], 'is not an acceleration that a load can have'],
    ['a shock without a peak', ['shock'], 'not told how strong the shock was'],
    ['a state that pallets do not have', ['pallets', 'tired'], 'is not one of the choices'],
    ['a photograph that there is not', ['pallets', 'fallen', '--photo', 'e99'], 'there is no evidence e99'],
    ['a count of no pallets', ['pallets', 'fallen', '--count', 'some'], '"some" is not a count of pallets'],
  ])('refuses %s, and says why', async (_, args, said) => {
    const before = here.entries(delivery).length;
    const ran = await record(...args, ...AT);
    expect(ran.code).toBe(2);
    expect(ran.err.replaceAll(/\s+/g, ' ')).toContain(said);
    expect(here.entries(delivery)).toHaveLength(before);
  });

  it('is put right and struck like any reading', async () => {
    await record('scale', '--steer', '11840lb', '--drive', '33420lb', ...AT);
    const right = await here.dossier(
      'correct',
      'e1',
      '--steer',
      '11480lb',
      '--why',
      'digits swapped',
      '-d',
      'delivery',
    );
    expect(right.err).toBe('');
    expect(last()).toMatchObject({
      becomes: { body: { steer: { value: 11_480, unit: 'lb' }, drive: { value: 33_420, unit: 'lb' } } },
    });
    await record('shock', '5.2g', '--threshold', '3g', ...AT);
    await here.dossier('correct', 'e2', '2.5g', '--why', 'next line', '-d', 'delivery');
    expect(last()).toMatchObject({
      becomes: { body: { peak: { value: 2.5, unit: 'g' }, threshold: { value: 3 } } },
    });
    const struck = await here.dossier('strike', 'e1', '--why', 'another truck', '-d', 'delivery');
    expect(struck.err).toBe('');
    const trail = await here.dossier('trail', '-d', 'delivery', '--csv');
    expect(trail.out).toContain('another truck');
    expect(trail.out).toMatch(/steer/);
  });
});

describe('notes and tables', () => {
  it('say the same in their own words', async () => {
    const notes = here.put(
      'notes.txt',
      `2026-07-14 load-1
05:00 pattern straight rows 1-4 corn each 1,650 lb
06:30 set-point 33F display rear
07:10 scale steer 11,840 lb drive 33,420lb ticket 4471
08:14 shock 5.2g vertical 11 ms threshold 3g
08:20 hard-braking 0.5g
08:30 pallets leaning rows 7-8 tail count 2 note by the driver
09:00 crushed rows 1 front
09:10 scale drive
`,
    );
    const ran = await here.dossier('record', '--notes', notes, '-d', 'delivery');
    const bodies = here
      .entries(delivery)
      .flatMap(({ type, body }) => (type === 'reading-recorded' ? [body] : []));
    expect(bodies).toMatchObject([
      { kind: 'pattern', palletWeight: { value: 1650, unit: 'lb' }, line: 'corn' },
      { kind: 'set-point', place: { compartment: 'rear' } },
      { kind: 'scale', steer: { value: 11_840 }, drive: { value: 33_420 }, ticket: '4471' },
      {
        kind: 'shock',
        what: 'shock',
        peak: { value: 5.2 },
        axis: 'vertical',
        milliseconds: 11,
        threshold: { value: 3 },
      },
      { kind: 'shock', what: 'hard-braking', peak: { value: 0.5, unit: 'g' } },
      { kind: 'pallets', state: 'leaning', rows: { from: 7, to: 8 }, count: 2, place: { position: 'tail' } },
      { kind: 'pallets', state: 'crushed', place: { compartment: 'front' } },
    ]);
    expect(ran.err).toContain('row 9: "drive" is not understood');
  });

  it('a readings table has a column for each', async () => {
    const table = here.put(
      'readings.csv',
      `time,kind,value,unit,stop,compartment,state,steer,drive,duration,threshold,rows,pallet-weight,line
2026-07-14 06:30,set-point,33,F,load-1,rear,,,,,,,,
2026-07-14 07:10,scale,,lb,load-1,,,11840,33420,,,,,
2026-07-14 08:14,shock,5.2 g,,load-1,,,,,11 ms,3 g,,,
2026-07-14 08:30,pallets,,,load-1,front,leaning,,,,,3-4,,
2026-07-14 05:00,pattern,straight,,load-1,,,,,,,1-4,1650 lb,corn
2026-07-14 08:15,shock,5.2,,load-1,,,,,,,,,
2026-07-14 07:11,scale,,,load-1,,,11840,,,,,,
2026-07-14 06:31,set-point,33,F,load-1,attic,,,,,,,,
`,
    );
    const ran = await here.dossier('collect', table, '-d', 'delivery');
    const kinds = here
      .entries(delivery)
      .flatMap(({ type, body }) => (type === 'reading-recorded' ? [body.kind] : []));
    expect(kinds).toEqual(['set-point', 'scale', 'shock', 'pallets', 'pattern']);
    const said = (ran.out + ran.err).replaceAll(/\s+/g, ' ');
    expect(said).toContain('"5.2" is not an acceleration with its unit');
    expect(said).toContain('"11840" is not a weight with its unit');
    expect(said).toContain('"attic" is not a known compartment');
  });
});

describe('dossier new', () => {
  const facts = ['--number', '1', '--carrier', 'Example Haulage', '--trailer', 'T-7'];
  const stops = ['--load', 'Yuma AZ', '--unload', 'Omaha NE'];

  it('takes compartments, and the one that each line is in', async () => {
    const made = await here.dossier(
      ...[
        'new',
        'two-rooms',
        ...facts,
        ...stops,
        '--compartment',
        'front; 20 ft; -10 °F; 5 °F',
        'rear; ; 34 °F',
      ],
      ...['--goods', 'sweet corn, frozen; in front', 'kale; 33 °F; 2 °F; 10; in rear'],
    );
    expect(made.err).not.toContain('is not');
    expect(made.code).toBe(0);
    const [first] = here.entries(here.at('two-rooms'));
    expect(first?.body).toMatchObject({
      facts: {
        equipment: {
          trailer: {
            compartments: [
              { id: 'front', bulkhead: '20 ft', instruction: { setPoint: '-10 °F', tolerance: '5 °F' } },
              { id: 'rear', instruction: { setPoint: '34 °F' } },
            ],
          },
        },
        lines: [{ compartment: 'front' }, { compartment: 'rear', pallets: 10 }],
      },
    });
  });

  it('names the option of a compartment that no line is in', async () => {
    const made = await here.dossier(
      ...[
        'new',
        'two-rooms',
        ...facts,
        ...stops,
        '--compartment',
        'front; 20 ft',
        'rear',
        '--goods',
        'kale; in front',
      ],
    );
    expect(made.code).toBe(2);
    expect(made.err.replaceAll(/\s+/g, ' ')).toContain('no line is in compartment "rear"');
    expect(made.err).toContain('--compartment');
  });
});

describe('dossier load', () => {
  it('shows rows, compartments, weights, axle weights and what is above a limit', async () => {
    await record(
      'pattern',
      'straight',
      '--rows',
      '1-4',
      '--line',
      'corn',
      '--pallet-weight',
      '2,000lb',
      ...AT,
    );
    const ran = await here.dossier('load', 'delivery');
    expect(ran.code).toBe(1);
    expect(ran.out).toContain('front: 16.0 ft (4.88 m) used of 20.0 ft (6.10 m)');
    expect(ran.out).toMatch(/steer\s+12,384 lb \(5,617 kg\).*ABOVE THE LIMIT/);
    expect(ran.out).toMatch(/drive\s+25,454 lb.*within/);
  });

  it('says what to do where nothing is recorded', async () => {
    const ran = await here.dossier('load', 'delivery');
    expect(ran.code).toBe(1);
    expect(ran.out).toContain('Nothing is recorded of rows, weights, doors, shocks or pallets');
  });
});

describe('a table of shocks without units', () => {
  let other: Yard;
  beforeAll(() => {
    other = yard();
  });
  afterAll(() => other.end());

  it('is kept as a paper until somebody says them, and is then read', async () => {
    await other.delivery('delivery', FACTS);
    const table = other.put('shocks.csv', 'Clock zone,America/Phoenix\nTime,Peak\n2026-07-14 21:14:05,4.4\n');
    const first = await other.dossier('collect', table, '-d', 'delivery');
    expect((first.out + first.err).replaceAll(/\s+/g, ' ')).toContain('nothing says in what unit "Peak" is');
    const wrong = await other.dossier('collect', table, '-d', 'delivery', '--shock-unit', 'hp');
    expect(wrong.code).toBe(2);
    const again = await other.dossier('collect', table, '-d', 'delivery', '--shock-unit', 'g');
    expect(again.out).toContain('table of shocks: 1 row, peaks in g');
    const shocks = other.entries(other.at('delivery')).filter(({ body }) => body.kind === 'shock');
    expect(shocks).toHaveLength(1);
  });
});

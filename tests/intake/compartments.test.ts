import { describe, expect, it } from 'vitest';
import { logsByCompartment } from '../../src/core/assess/logs/compartments.js';
import type { Compartment } from '../../src/core/model/compartment.js';
import { DossierError } from '../../src/core/model/error.js';
import { parseDeliveryFile } from '../../src/intake/delivery-file.js';
import { celsius, mappingOf, read, recognised } from './unit-log/reading.js';

/** Invented: frozen goods in front, chilled behind the bulkhead. */
const YAML = `delivery: MT-1
parties: { carrier: { name: Copper Basin Carriers } }
equipment:
  trailer:
    number: "118"
    insideLength: 52 ft
    compartments:
      - { id: front, bulkhead: 20 ft, instruction: { setPoint: -10 °F, tolerance: 5 °F } }
      - { id: rear }
stops:
  - { id: load-1, does: load, place: "Yuma, Arizona", zone: America/Phoenix }
  - { id: drop-1, does: unload, place: "Omaha, Nebraska", zone: America/Chicago }
lines:
  - { id: peas, goods: "peas, frozen", from: load-1, to: drop-1, compartment: front }
  - { id: kale, goods: kale, from: load-1, to: drop-1, compartment: rear, instruction: { setPoint: 34 °F } }
`;
const facts = (right = '', wrong = '') =>
  parseDeliveryFile(YAML.replace(right, wrong), 'delivery.yaml').facts;

describe('compartments in delivery.yaml', () => {
  it('give a line without an instruction that of its compartment', () => {
    expect(facts().lines.map(({ instruction }) => instruction?.setPoint)).toEqual([
      { value: -10, unit: '°F' },
      { value: 34, unit: '°F' },
    ]);
  });

  it.each([
    [
      'a compartment that no line is in',
      'compartment: rear',
      'compartment: front',
      'no line is in compartment "rear"',
    ],
    ['a line in none', ', compartment: rear', '', 'say in which compartment line "kale" is: front, rear'],
    [
      'a line in one that there is not',
      'compartment: rear',
      'compartment: tail',
      'there is no compartment "tail"; there are front, rear',
    ],
    [
      'a bulkhead beyond the trailer',
      '20 ft',
      '60 ft',
      'a bulkhead 60 ft from the front wall is beyond the trailer of 52 ft',
    ],
    [
      'a bulkhead at the doors',
      '{ id: rear }',
      '{ id: rear, bulkhead: 50 ft }',
      'the last compartment "rear" ends at the doors',
    ],
    [
      'a bulkhead at the front wall',
      '20 ft',
      '0 ft',
      'the bulkhead behind "front" is not behind the one before it',
    ],
    [
      'the name of a part of the load',
      'id: rear',
      'id: nose',
      '"nose" is the name of a part of the load too',
    ],
    ['the name of a line', 'id: rear', 'id: Kale', '"Kale" is the name of a line too'],
    ['a name twice', 'id: rear', 'id: front', '"front" is the name of another compartment too'],
    ['one compartment alone', '      - { id: rear }\n', '', 'expected array to have >=2 items'],
  ])('refuse %s, with the reason', (_, right, wrong, said) => {
    try {
      facts(right, wrong);
    } catch (error) {
      if (!(error instanceof DossierError)) throw error;
      expect([error.message, ...(error.others ?? [])].join('\n')).toContain(said);
      return;
    }
    throw new Error('it was accepted');
  });

  it('need none where a trailer has one box, and refuse a line that names one', () => {
    const plain = YAML.replace(/ {4}compartments:\n(?: {6}.*\n)+/, '');
    expect(() => parseDeliveryFile(plain, 'delivery.yaml')).toThrow(
      /list it under equipment: trailer: compartments/,
    );
  });
});

const COMPARTMENTS: Compartment[] = [{ id: 'front' }, { id: 'rear' }];
const table = (...headings: string[]) =>
  [
    ['Time', ...headings],
    ['2026-07-14 04:00', ...headings.map((_, i) => String(10 * (i + 1)))],
    ['2026-07-14 04:15', ...headings.map((_, i) => String(10 * (i + 1) + 1))],
  ]
    .map((cells) => cells.join(','))
    .join('\n');
const channelsOf = async (headings: string[], compartments = COMPARTMENTS) =>
  (await mappingOf(table(...headings), { compartments })).channels.map(
    (c) => `${c.compartment ?? 'all'} ${c.channel} ${c.column}`,
  );

describe('a log of a trailer with compartments', () => {
  it.each([
    [
      'their numbers',
      ['Zone 1 return (°F)', 'Zone 2 return (°F)', 'Zone 1 set point (°F)', 'Zone 2 set point (°F)'],
    ],
    ['letters and numbers', ['Z1 return air °F', 'Z2 return air °F', 'Z1 setpoint °F', 'Z2 setpoint °F']],
    ['numbers behind', ['Return air 1 (°F)', 'Return air 2 (°F)', 'Set point 1 (°F)', 'Set point 2 (°F)']],
    [
      'Spanish',
      [
        'Retorno compartimento 1 (°F)',
        'Retorno compartimento 2 (°F)',
        'Consigna compartimento 1 (°F)',
        'Consigna compartimento 2 (°F)',
      ],
    ],
    ['their names', ['Front return (°F)', 'Rear return (°F)', 'Front set point (°F)', 'Rear set point (°F)']],
  ])('has its columns by %s', async (_, headings) => {
    expect((await channelsOf(headings)).sort()).toEqual([
      'front return-air 1',
      'front set-point 3',
      'rear return-air 2',
      'rear set-point 4',
    ]);
  });

  it('has them as delivery.yaml names them, whatever the headings say', async () => {
    const named: Compartment[] = [
      { id: 'front', columns: { 'return-air': 'Fuehler A' } },
      { id: 'rear', columns: { 'return-air': 4 } },
    ];
    const text = table('Fuehler A', 'Ambient (°F)', 'Fuehler B');
    expect((await mappingOf(text, { compartments: named, logUnit: '°F' })).channels).toMatchObject([
      { channel: 'ambient', column: 2 },
      { channel: 'return-air', column: 1, compartment: 'front' },
      { channel: 'return-air', column: 3, compartment: 'rear' },
    ]);
  });

  it('says which column it lacks of those that delivery.yaml names', async () => {
    const named: Compartment[] = [
      { id: 'front', columns: { 'return-air': 'Zone 1 return (°F)' } },
      { id: 'rear', columns: { 'return-air': 'Zone 3 return (°F)' } },
    ];
    const found = await recognised(table('Zone 1 return (°F)', 'Zone 2 return (°F)'), {
      compartments: named,
    });
    expect(found).toMatchObject({
      is: 'log',
      missing: [{ compartment: 'rear', means: 'return-air', column: 'Zone 3 return (°F)' }],
    });
  });

  it('is of the whole trailer where its headings name one compartment or none', async () => {
    expect(await channelsOf(['Return air (°F)', 'Set point (°F)'])).toEqual([
      'all set-point 2',
      'all return-air 1',
    ]);
    expect(await channelsOf(['Zone 1 return (°F)', 'Set point (°F)'])).toEqual([
      'all set-point 2',
      'all return-air 1',
    ]);
  });

  it('reads the first zone alone where delivery.yaml has no compartments', async () => {
    expect(await channelsOf(['Zone 1 return (°F)', 'Zone 2 return (°F)'], [])).toEqual(['all return-air 1']);
  });

  it('becomes a log for each compartment: ambient air is of both, and a set point that names none of neither', async () => {
    const text = table('Zone 1 return (°C)', 'Zone 2 return (°C)', 'Ambient (°C)', 'Set point (°C)');
    const logs = logsByCompartment(await read(text, { compartments: COMPARTMENTS }));
    expect(logs.map(({ compartment, channels }) => [compartment, Object.keys(channels).sort()])).toEqual([
      ['front', ['ambient', 'return-air']],
      ['rear', ['ambient', 'return-air']],
    ]);
    expect(logs.map(({ channels }) => celsius(channels['return-air']))).toEqual([
      [10, 11],
      [20, 21],
    ]);
  });

  it('is of the compartment that its recorder lay in', async () => {
    const [only] = logsByCompartment(await read(table('Temperature (°C)')), 'rear');
    expect(only?.compartment).toBe('rear');
  });
});

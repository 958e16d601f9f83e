import { describe, expect, it } from 'vitest';
import { parseDeliveryFile } from '../../src/intake/delivery-file.js';
import type { LogOptions } from '../../src/intake/draft.js';
import { readShockTable, type ShockTable } from '../../src/intake/shock-table/examine.js';
import { DELIVERY_YAML } from './a-delivery.js';

const { facts: delivery } = parseDeliveryFile(DELIVERY_YAML, 'delivery.yaml');
const table = (text: string, options: LogOptions = {}): ShockTable | undefined =>
  readShockTable({ text, fileName: 'shocks.csv', delivery, options });
function shocks(text: string, options?: LogOptions) {
  const read = table(text, options);
  if (read?.is !== 'shocks') throw new Error(JSON.stringify(read));
  return read;
}
function lack(text: string, options?: LogOptions): string {
  const read = table(text, options);
  if (read?.is !== 'lacking') throw new Error('it was read');
  return `${read.problem.message}: ${read.problem.fix}`;
}
const CLOCK = 'Clock zone,America/Chicago\n';

describe('a table of a shock recorder', () => {
  it('gives each row with its peak, duration, axis, threshold, recorder and time', () => {
    const read = shocks(`Demonstration data, invented
Recorder,SR-88
Threshold,3 g
${CLOCK}
Date time,Peak (g),Duration (ms),Axis
2026-07-14 21:14:05,5.2,11,vertical
2026-07-15 02:40:31,3.4,18,longitudinal
`);
    expect(read.takenFor).toBe(
      'table of shocks: 2 rows, peaks in g, threshold 3 g, clock in America/Chicago',
    );
    expect(read.readings.map(({ row }) => row)).toEqual([7, 8]);
    expect(read.readings[0]?.reading).toMatchObject({
      kind: 'shock',
      what: 'shock',
      peak: { value: 5.2, unit: 'g' },
      milliseconds: 11,
      axis: 'vertical',
      threshold: { value: 3, unit: 'g' },
      instrument: 'SR-88',
      time: { is: 'known', instant: '2026-07-15T02:14:05.000Z', basis: 'log-zone' },
    });
  });

  it.each([
    [
      'the strongest of three axes, with its name',
      'Time,X (g),Y (g),Z (g)',
      '2026-07-14 21:14:05,0.4,-1.2,4.9',
      { peak: { value: 4.9, unit: 'g' }, axis: 'z' },
    ],
    [
      'the resultant where there is one',
      'Time,X (g),Z (g),Vector sum (g)',
      '2026-07-14 21:14:05,0.4,4.9,5.1',
      { peak: { value: 5.1, unit: 'g' }, axis: 'resultant' },
    ],
    [
      'a threshold of its own in each row',
      'Time,Shock [g],Trigger [g]',
      '2026-07-14 21:14:05,4.1,2.5',
      { threshold: { value: 2.5, unit: 'g' } },
    ],
    [
      'seconds as milliseconds',
      'Time,Impact (m/s²),Duration (s)',
      '2026-07-14 21:14:05,41,0.02',
      { peak: { value: 41, unit: 'm/s²' }, milliseconds: 20 },
    ],
    [
      'a unit in the cells',
      'Time,Peak',
      '2026-07-14 21:14:05,41 m/s2',
      { peak: { value: 41, unit: 'm/s²' } },
    ],
    [
      'Spanish headings',
      'Fecha y hora,Golpe (g),Duración (ms),Eje',
      '2026-07-14 21:14:05,4.4,12,vertical',
      { peak: { value: 4.4, unit: 'g' }, milliseconds: 12, axis: 'vertical' },
    ],
    [
      'hard braking by the word of the event',
      'Time,Event,Deceleration (mph/s)',
      '2026-07-14 21:14:05,Harsh Braking,8.6',
      { what: 'hard-braking', peak: { value: 8.6, unit: 'mph/s' } },
    ],
    [
      'an event without a figure',
      'Date,Time,Event type',
      '2026-07-14,21:14:05,Hard cornering',
      { what: 'hard-turn' },
    ],
  ])('reads %s', (_, headings, row, expected) => {
    expect(shocks(`${CLOCK}${headings}\n${row}\n`).readings[0]?.reading).toMatchObject(expected);
  });

  it('takes the unit from a line above, or from a person', () => {
    const bare = 'Time,Peak\n2026-07-14 21:14:05,4.4\n';
    const expected = { peak: { value: 4.4, unit: 'g' } };
    expect(shocks(`${CLOCK}Unit,g\n${bare}`).readings[0]?.reading).toMatchObject(expected);
    expect(shocks(`${CLOCK}${bare}`, { shockUnit: 'g' }).readings[0]?.reading).toMatchObject(expected);
  });

  it('names a row that it cannot read, and reads the others', () => {
    const read = shocks(
      `${CLOCK}Time,Peak (g)\n2026-07-14 21:14:05,4.4\n2026-07-14 21:15:00,strong\nlater,3\n`,
    );
    expect(read.readings).toHaveLength(1);
    expect(read.problems.map(({ where, message }) => [where?.row, message])).toEqual([
      [4, 'neither a peak with its unit nor an event that is known'],
      [5, '"later" is not a date and time'],
    ]);
  });

  it.each([
    [
      'no unit',
      `${CLOCK}Time,Peak\n2026-07-14 21:14:05,4.4\n`,
      'nothing says in what unit "Peak" is: say the unit of the peaks with --shock-unit',
    ],
    [
      'no zone, and stops in two',
      'Time,Peak (g)\n2026-07-14 21:14:05,4.4\n',
      'say the zone that the clock is set to with --log-zone',
    ],
    [
      'dates of two readings',
      `${CLOCK}Time,Peak (g)\n03/04/2031 21:14,4.4\n`,
      '--log-dates month-day-year or --log-dates day-month-year',
    ],
    [
      'more rows than events',
      `${CLOCK}Time,Peak (g)\n${'2026-07-14 21:14:05,0.1\n'.repeat(2001)}`,
      'save the rows at or above the threshold',
    ],
  ])('says what it lacks: %s', (_, text, said) => {
    expect(lack(text)).toContain(said);
  });

  it.each([
    ['a table of readings', 'Time,Temperature (°F)\n2026-07-14 21:14,36\n'],
    ['a list of events of another kind', 'Time,Event\n2026-07-14 21:14,Fuel stop\n'],
    ['a table of amounts', 'Date,Type,Amount\n2026-07-14,invoice,900\n'],
    ['a text', 'The driver braked hard at the exit.\n'],
    ['nothing', ''],
  ])('is not %s', (_, text) => {
    expect(table(text)).toBeUndefined();
  });
});

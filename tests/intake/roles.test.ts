import { describe, expect, it } from 'vitest';
import { contact, readingFrom } from '../../src/core/model/evidence.js';
import { readReadings } from '../../src/intake/readings.js';
import { roleOf, roleOfName } from '../../src/intake/roles.js';
import { parseWrittenTable } from '../../src/intake/table/written-table.js';
import { parseReading } from '../../src/jobs/record-reading.js';
import { delivery } from './a-delivery.js';

describe('the part that somebody plays', () => {
  it.each([
    ['consignee', 'receiver'],
    ['the Consignee', 'receiver'],
    ["shipper's agent", 'shipper'],
    ['shipper’s agent', 'shipper'],
    ['consignor', 'shipper'],
    ['warehouse', 'other'],
    ['insurance company', 'insurer'],
    ['receiver', 'receiver'],
    ['R. Vela', undefined],
  ])('%s', (said, role) => expect(roleOf(said, contact.shape.with.options)).toBe(role));

  it.each([
    ['receiver', 'receiver'],
    ['the consignee, R. Vela', 'receiver'],
    ['receiving clerk T. Lane', 'receiver'],
    ["shipper's agent", 'shipper'],
    ['inspector', 'inspector'],
    ['warehouse', 'other'],
    ['M. Ortega', undefined],
    ['Shipperton Farms', undefined],
  ])('a name that begins with it: %s', (name, role) =>
    expect(roleOfName(name, readingFrom.options)).toBe(role),
  );
});

describe('a reading taken by another than the driver', () => {
  const now = new Date('2026-07-17T00:00:00Z');
  const recorded = (fields: Record<string, unknown>) =>
    parseReading(
      { kind: 'pulp', word: '44F', fields: { at: '2026-07-16 06:08', stop: 'drop-1', ...fields } },
      delivery,
      now,
    );
  it.each([
    ['typed with by', { by: 'receiver' }, 'receiver'],
    ['typed with by and a name', { by: 'consignee R. Vela' }, 'receiver'],
    ['typed with a name', { by: 'M. Ortega' }, 'driver'],
    ['typed with from', { from: 'consignee', by: 'R. Vela' }, 'receiver'],
    ['typed with both, where from counts', { from: 'inspector', by: 'receiver' }, 'inspector'],
  ])('%s', (_, fields, from) => expect(recorded(fields)).toMatchObject({ from }));

  it('in a table', () => {
    const table = parseWrittenTable(
      'time,kind,value,unit,stop,by,from\n2026-07-16 06:08,pulp,44,F,drop-1,receiver,\n2026-07-16 06:09,pulp,44,F,drop-1,R. Vela,Consignee\n2026-07-16 06:10,pulp,44,F,drop-1,M. Ortega,\n',
      'r.csv',
    );
    const { readings, problems } = readReadings(table, 'r.csv', delivery);
    expect(problems).toEqual([]);
    expect(readings.map(({ reading }) => 'from' in reading && reading.from)).toEqual([
      'receiver',
      'receiver',
      'driver',
    ]);
  });
});

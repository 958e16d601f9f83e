import { parse } from 'csv-parse/sync';
import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { exhibitsCsv } from '../../src/jobs/dossier/exhibits-csv.js';
import { sampleInput } from '../compose/sample.js';

const { state, exhibits } = await sampleInput();
const rowsOf = (...given: Parameters<typeof exhibitsCsv>) =>
  z.array(z.record(z.string(), z.string())).parse(parse(exhibitsCsv(...given), { columns: true }));

describe('the table of exhibits', () => {
  const rows = rowsOf(state, exhibits);

  it('has a row for each, by its number', () => {
    expect(rows.map(({ exhibit }) => Number(exhibit))).toEqual(exhibits.map(({ exhibit }) => exhibit));
  });

  it('has a reading as it was read, and the hash of a file', () => {
    for (const item of state.evidence) {
      const row = rows.find(({ evidence }) => evidence === item.evidence);
      if (item.kind === 'pulp')
        expect(row).toMatchObject({ value: String(item.temperature.value), unit: item.temperature.unit });
      if ('file' in item) expect(row?.sha256).toBe(item.file.sha256);
    }
  });

  it('has no coordinates, and of what is withheld no value', () => {
    expect(state.evidence.some((item) => item.place?.gps !== undefined)).toBe(true);
    expect(exhibitsCsv(state, exhibits)).not.toMatch(/32\.69213|-114\.62441/);
    const evidence = state.evidence.map((item) =>
      item.kind === 'pulp' ? { ...item, withheld: 'not for outsiders' } : item,
    );
    for (const row of rowsOf({ ...state, evidence }, exhibits))
      if (row.kind === 'pulp') expect(row).toMatchObject({ value: '', unit: '' });
  });
});

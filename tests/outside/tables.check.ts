import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, describe, expect } from 'vitest';
import { parseDeliveryFile } from '../../src/intake/delivery-file.js';
import { examineFile } from '../../src/intake/examine.js';
import { readUnitLog } from '../../src/intake/unit-log/read.js';
import { DELIVERY_YAML, someHash } from '../intake/a-delivery.js';
import { evidence } from '../intake/unit-log/reading.js';
import { ask, checkWith, pandas, scratch, soffice } from './programs.js';

/**
 * Tables of other programs' shapes, with invented values, against pandas, which is told by hand how each is written;
 * and spreadsheets that LibreOffice made.
 */
const room = scratch();
afterAll(() => room.end());
const delivery = parseDeliveryFile(
  DELIVERY_YAML.replace('America/Chicago', 'America/Phoenix'),
  'delivery.yaml',
).facts;

/** Sixty rows of a quarter of an hour through two midnights, in tenths of a degree Celsius. */
const ROWS = Array.from({ length: 60 }, (_, i) => ({
  at: new Date(Date.UTC(2026, 6, 8, 20, 30) + i * 900_000),
  tenths: 35 + ((i * 7) % 23) - (i % 5),
}));
const two = (n: number) => String(n).padStart(2, '0');
const parts = (at: Date) => ({
  ...{ y: at.getUTCFullYear(), m: two(at.getUTCMonth() + 1), d: two(at.getUTCDate()) },
  clock: `${two(at.getUTCHours())}:${two(at.getUTCMinutes())}`,
  noon: `${two(at.getUTCHours() % 12 || 12)}:${two(at.getUTCMinutes())}:00 ${at.getUTCHours() < 12 ? 'AM' : 'PM'}`,
});
type Row = ReturnType<typeof parts> & { c: string; f: string; ms: number; i: number };
const lines = (row: (r: Row) => string | string[]) =>
  ROWS.flatMap(({ at, tenths }, i) => {
    const c = (tenths / 10).toFixed(1);
    const f = String((tenths / 10) * 1.8 + 32);
    return row({ ...parts(at), c, f, ms: at.getTime(), i });
  });

interface Shape {
  name: string;
  text: string | Uint8Array;
  /** Python: from `path` to a series `at` of times in UTC and a series `c` of degrees Celsius. */
  python: string;
}

const utc = (hours: number) => `at = (at - pd.Timedelta(hours=${hours})).dt.tz_localize('UTC')`;
const PHOENIX = `at = at.dt.tz_localize('America/Phoenix').dt.tz_convert('UTC')`;

const SHAPES: readonly Shape[] = [
  {
    name: 'heading-with-offset.csv',
    text: [
      '"Title: invented"',
      '"#","Date Time, GMT+01:00","Temp, °F (LGR 1)","RH, % (LGR 1)"',
      ...lines((r) => `${r.i},${r.m}/${r.d}/26 ${r.noon},${r.f},91`),
    ].join('\n'),
    python: `d = pd.read_csv(path, skiprows=1)
at = pd.to_datetime(d.iloc[:, 1], format='%m/%d/%y %I:%M:%S %p'); ${utc(1)}
c = (d.iloc[:, 2] - 32) / 1.8`,
  },
  {
    name: 'points-and-commas.csv',
    text: Buffer.from(
      [
        'Datum;Uhrzeit;1. Temperatur [°C];2. Feuchte [%]',
        ...lines((r) => `${r.d}.${r.m}.${r.y};${r.clock};${r.c.replace('.', ',')};91,5`),
      ].join('\r\n'),
      'latin1',
    ),
    python: `d = pd.read_csv(path, sep=';', decimal=',', encoding='latin1')
at = pd.to_datetime(d.iloc[:, 0] + ' ' + d.iloc[:, 1], format='%d.%m.%Y %H:%M'); ${PHOENIX}
c = d.iloc[:, 2]`,
  },
  {
    name: 'year-first.csv',
    text: ['Date Time,Temp (°C)', ...lines((r) => `26.${r.m}.${r.d} ${r.clock}:00,${r.c}`)].join('\n'),
    python: `d = pd.read_csv(path)
at = pd.to_datetime(d.iloc[:, 0], format='%y.%m.%d %H:%M:%S'); ${PHOENIX}
c = d.iloc[:, 1]`,
  },
  {
    name: 'month-first-with-points.csv',
    text: ['Date,Time,Temp (°C)', ...lines((r) => `${r.m}.${r.d}.26,${r.clock},${r.c}`)].join('\n'),
    python: `d = pd.read_csv(path)
at = pd.to_datetime(d['Date'] + ' ' + d['Time'], format='%m.%d.%y %H:%M'); ${PHOENIX}
c = d.iloc[:, 2]`,
  },
  {
    name: 'one-heading-twice.csv',
    text: [
      '#,Date Time,Date Time,Temp (°C)',
      ...lines((r) => `${r.i},${r.m}/${r.d}/${r.y},${r.clock},${r.c}`),
    ].join('\n'),
    python: `d = pd.read_csv(path)
at = pd.to_datetime(d.iloc[:, 1] + ' ' + d.iloc[:, 2], format='%m/%d/%Y %H:%M'); ${PHOENIX}
c = d.iloc[:, 3]`,
  },
  {
    name: 'offset-in-each-row.csv',
    text: [
      'Unit',
      'Celsius',
      'index,date,temperature',
      ...lines((r) => `${r.i},${r.y}-${r.m}-${r.d}T${r.clock}:00-0600,${r.c}`),
    ].join('\n'),
    python: `d = pd.read_csv(path, skiprows=2)
at = pd.to_datetime(d['date'], utc=True)
c = d['temperature']`,
  },
  {
    name: 'counted-milliseconds.csv',
    text: ['ts,temp_c', ...lines((r) => `${r.ms},${r.c}`)].join('\n'),
    python: `d = pd.read_csv(path)
at = pd.to_datetime(d['ts'], unit='ms', utc=True)
c = d['temp_c']`,
  },
  {
    name: 'a-quantity-in-each-row.csv',
    text: [
      'Time,Quantity,Value,Unit',
      ...lines((r) => [
        `${r.y}-${r.m}-${r.d} ${r.clock},temperature,${r.f},°F`,
        `${r.y}-${r.m}-${r.d} ${r.clock},humidity,91,%`,
      ]),
    ].join('\n'),
    python: `d = pd.read_csv(path); d = d[d['Quantity'] == 'temperature']
at = pd.to_datetime(d['Time'], format='%Y-%m-%d %H:%M'); ${PHOENIX}
c = (d['Value'] - 32) / 1.8`,
  },
  {
    name: 'records.jsonl',
    text: lines((r) => JSON.stringify({ time: `${r.y}-${r.m}-${r.d} ${r.clock}`, temp_c: Number(r.c) })).join(
      '\n',
    ),
    python: `d = pd.read_json(path, lines=True, convert_dates=False)
at = pd.to_datetime(d['time'], format='%Y-%m-%d %H:%M'); ${PHOENIX}
c = d['temp_c']`,
  },
  {
    name: 'records.xml',
    text: `<?xml version="1.0"?><log>${lines((r) => `<row time="${r.y}-${r.m}-${r.d} ${r.clock}" temp_c="${r.c}"/>`).join('')}</log>`,
    python: `d = pd.read_xml(path, xpath='.//row', parser='etree')
at = pd.to_datetime(d['time'], format='%Y-%m-%d %H:%M'); ${PHOENIX}
c = d['temp_c']`,
  },
];

/** Times in seconds and values as pandas reads them, and as they are read here. */
function theirs({ python }: Pick<Shape, 'python'>, path: string): unknown {
  const script = `import json, sys
import pandas as pd
path = sys.argv[1]
${python}
print(json.dumps([[int(a.timestamp()), round(float(v), 6)] for a, v in zip(at, c)]))`;
  const { status, out } = ask(pandas, '-c', script, path);
  if (status !== 0) throw new Error(out);
  return JSON.parse(out);
}

async function ours(path: string, name: string): Promise<unknown> {
  const bytes = readFileSync(path).length;
  const { received, problems } = await examineFile({
    path,
    name,
    file: { name, bytes, sha256: someHash },
    delivery,
  });
  if (received.kind !== 'unit-log') throw new Error(problems[0]?.message ?? 'no log');
  const log = await readUnitLog(path, received.mapping, { evidence, addedSeconds: 0 });
  return Array.from(log.times, (at, i) => [
    at / 1000,
    Number((log.channels.probe?.[i] ?? Number.NaN).toFixed(6)),
  ]);
}

describe('tables are read as pandas reads them when it is told how', () => {
  for (const shape of SHAPES)
    checkWith(pandas, shape.name, async () => {
      const path = room.put(shape.name, shape.text);
      const read = await ours(path, shape.name);
      expect(read).toHaveLength(ROWS.length);
      expect(read).toEqual(theirs(shape, path));
    });
});

describe('spreadsheets that LibreOffice made are read as the table that they were made from', () => {
  const text = ['Date time,Temp (°C)', ...lines((r) => `${r.y}-${r.m}-${r.d} ${r.clock}:00,${r.c}`)].join(
    '\n',
  );
  for (const form of ['xls', 'ods', 'xlsx'])
    checkWith(soffice, form, async () => {
      const table = room.put('made.csv', text);
      const { status, out } = ask(
        soffice,
        `-env:UserInstallation=file://${room.folder}/profile`,
        ...['--headless', '--convert-to', form, '--outdir', room.folder, table],
      );
      if (status !== 0) throw new Error(out);
      expect(await ours(join(room.folder, `made.${form}`), `made.${form}`)).toEqual(
        await ours(table, 'made.csv'),
      );
    });
});

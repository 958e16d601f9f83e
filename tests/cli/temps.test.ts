import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type Yard, yard } from './a-delivery.js';

let here: Yard;
let folder: string;
const minutes = (from: number, count: number) =>
  Array.from({ length: count }, (_, i) => {
    const at = new Date(Date.UTC(2026, 6, 14, 5) + (from + i * 15) * 60_000).toISOString();
    return `${at.slice(0, 10)} ${at.slice(11, 16)},36.0,${i === 20 ? '44.0' : '36.5'},35.0`;
  });

beforeAll(async () => {
  here = yard();
  folder = await here.delivery();
  await here.aboard(folder, '2026-07-14T05:00', '2026-07-15T07:00');
  const csv = ['Time,Set point (°F),Return air (°F),Supply air (°F)', ...minutes(0, 97)].join('\n');
  const taken = await here.dossier(
    'collect',
    here.put('unit.csv', `${csv}\n`),
    '--log-zone',
    'America/Phoenix',
    '-d',
    folder,
  );
  if (taken.code !== 0) throw new Error(taken.out + taken.err);
});
afterAll(() => here.end());

describe('dossier temps', () => {
  it('says what the log shows, with a chart', async () => {
    const { code, out } = await here.dossier('temps', folder);
    expect(code).toBe(0);
    expect(out).toContain('Band     34.0 °F (1.1 °C) to 38.0 °F (3.3 °C)');
    expect(out).toMatch(/[\u2801-\u28ff]/);
    expect(out).toMatch(/above from Tue Jul 14, 2026, 9:48 AM MST/);
    expect(out).toContain('Lettuce, romaine');
  });

  it('fits 80 columns, with no number parted from its unit', async () => {
    const delivery = await here.delivery('narrow');
    await here.aboard(delivery, '2026-07-14T05:00', '2026-07-15T07:00');
    await here.dossier('collect', here.at('unit.csv'), '--log-zone', 'America/Phoenix', '-d', delivery);
    await here.dossier('record', 'pulp', '36F', '--line', 'romaine', '--stop', 'load-1', '-d', delivery);
    const { out } = await here.dossier('temps', delivery);
    expect(out.split('\n').filter((line) => [...line].length > 80)).toEqual([]);
    expect(out).toMatch(/above/);
    expect(out).not.toMatch(/\d\n +(?:°[CF]|h|min|%)/);
  });

  it('says once what is known of a thermometer, however many groups it read', async () => {
    const delivery = await here.delivery('pulps');
    await here.aboard(delivery, '2026-07-14T05:00', '2026-07-15T07:00');
    for (const [line, at] of [
      ['romaine', '2026-07-14T04:00'],
      ['celery', '2026-07-14T04:05'],
    ] as const)
      await here.dossier(
        ...['record', 'pulp', '36F', '--line', line, '--stop', 'load-1', '--at', at],
        ...['--instrument', 'P-7', '-d', delivery],
      );
    await here.dossier('collect', here.at('unit.csv'), '--log-zone', 'America/Phoenix', '-d', delivery);
    const { out } = await here.dossier('temps', delivery);
    expect(out).toMatch(/romaine at load-1: 1 from[\s\S]*celery at load-1: 1 from/);
    expect(out.match(/thermometer P-7: no ice-water check/g)).toHaveLength(1);
  });

  it('lists the heaviest of very many excursions and says how many more there are', async () => {
    const delivery = await here.delivery('restless');
    await here.aboard(delivery, '2026-07-14T05:00', '2026-07-15T07:00');
    const rows = Array.from({ length: 3 * 5_003 }, (_, i) => {
      const at = new Date(Date.UTC(2026, 6, 14, 5) + i * 5000).toISOString();
      return `${at.slice(0, 10)} ${at.slice(11, 19)},36.0,${i % 3 === 1 ? (i < 9 ? '38.1' : '39.0') : '36.5'}`;
    });
    const log = here.put('restless.csv', `Time,Set point (°F),Return air (°F)\n${rows.join('\n')}\n`);
    await here.dossier('collect', log, '--log-zone', 'America/Phoenix', '-d', delivery);
    const { out } = await here.dossier('temps', delivery);
    const listed = [...out.matchAll(/^(\S+-x\d+) {2}above/gm)].map(([, id = '']) => id.replace(/^.*-/, ''));
    expect(listed).toHaveLength(5_000);
    expect([listed[0], listed.at(-1)]).toEqual(['x4', 'x5003']);
    expect(out).toContain('\nand 3 more of fewer degree-hours\n');
    const csv = await here.dossier('temps', delivery, '--csv');
    expect(csv.out.trim().split('\n')).toHaveLength(5_001);
    expect(csv.err).toContain('3 more of fewer degree-hours are not listed');
  });

  it('makes no figure of a log while nothing says when the goods were aboard, and asks for it', async () => {
    const delivery = await here.delivery('unbounded');
    await here.dossier('collect', here.at('unit.csv'), '--log-zone', 'America/Phoenix', '-d', delivery);
    const { code, out } = await here.dossier('temps', delivery);
    expect(code).toBe(1);
    expect(out).toMatch(/When were the doors closed at loading, and\s+opened at unloading\?/);
    const asked = ['--from', '2026-07-14T06:00', '--to', '2026-07-14T18:00-05:00'];
    expect((await here.dossier('temps', delivery, ...asked)).out).toContain('asked');
    const half = await here.dossier('temps', delivery, '--from', '2026-07-14T06:00');
    expect(half.err).toContain('Give both --from and --to');
  });

  it('over a window that was asked for, in time of the places', async () => {
    const asked = ['--from', '2026-07-14T06:00', '--to', '2026-07-14T18:00-05:00', '--json'];
    const { code, out } = await here.dossier('temps', folder, ...asked);
    expect(code).toBe(0);
    const [result] = JSON.parse(out).temperatures;
    // Phoenix is UTC−7 all year.
    expect(result.custody.from).toEqual({ at: Date.UTC(2026, 6, 14, 13), basis: 'asked' });
    expect(result.custody.to.at).toBe(Date.UTC(2026, 6, 14, 23));
  });

  it('draws the chart as SVG', async () => {
    const { code, out } = await here.dossier('temps', folder, '--svg');
    expect(code).toBe(0);
    expect(out).toMatch(/^<svg [\s\S]*<\/svg>\s*$/);
  });

  it('lists the excursions as CSV', async () => {
    const { out } = await here.dossier('temps', folder, '--csv');
    expect(out.split('\r\n')).toHaveLength(2);
  });

  it.each([
    ['--leg', '4'],
    ['--log', 'e77'],
    ['--from', 'yesterday'],
    ['--from', '2026-07-15T00:00', '--to', '2026-07-14T00:00'],
    ['--json', '--csv'],
    ['--leg', '1', '--to', '2026-07-14T00:00'],
  ])('refuses %s %s: bad use, and says what to do', async (...flags) => {
    const { code, out, err } = await here.dossier('temps', folder, ...flags);
    expect(code).toBe(2);
    expect(out).toBe('');
    expect(err).not.toContain('bug');
  });
});

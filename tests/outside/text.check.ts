import { afterAll, beforeAll, describe, expect } from 'vitest';
import { buildFrom, collectInto, type Demo, newDemo } from '../demo/demo.js';
import { channel, custody, pulps, type Rise, refusedAt, rises, summary } from '../demo/raw.js';
import { EVIDENCE } from '../demo/where.js';
import { ask, checkWith, pdftotext } from './programs.js';

/**
 * What is printed on the pages, read by Poppler's pdftotext, against figures that a few lines of other code
 * compute from the demonstration's tables (tests/demo/raw.ts).
 */
let demo: Demo;
let file: string;
beforeAll(async () => {
  demo = await newDemo();
  await collectInto(demo, EVIDENCE);
  file = (await buildFrom(demo)).file;
});
afterAll(() => demo.end());

/** One blank for any white space, no-break spaces too: lines break where the page wants them to. */
const even = (text: string) => text.replace(/\s+/g, ' ');
const layout = (...more: string[]) => ask(pdftotext, '-layout', ...more, file, '-').out;
const rowsOf = (text: string) => text.split('\n').map(even);

const both = (fahrenheit: number) =>
  `${fahrenheit.toFixed(1)} °F (${((fahrenheit - 32) / 1.8).toFixed(1)} °C)`;
const degreeHours = (hours: number) => `${hours.toFixed(1)} °F·h (${(hours / 1.8).toFixed(1)} °C·h)`;
function length(milliseconds: number): string {
  const minutes = Math.round(Math.round(milliseconds / 1000) / 60);
  const rest = minutes % 60;
  if (minutes < 60) return `${minutes} min`;
  return `${Math.floor(minutes / 60)} h ${String(rest).padStart(2, '0')} min`;
}
/** `Tue Jul 14, 2026, 5:31 AM MST`, by the machine's own tables of zones. */
function local(at: number, timeZone: string, zoneName: string): string {
  const parts = new Map(
    new Intl.DateTimeFormat('en-US', {
      timeZone,
      weekday: 'short',
      day: 'numeric',
      month: 'short',
      year: 'numeric',
      hour: 'numeric',
      minute: '2-digit',
    })
      .formatToParts(at)
      .map(({ type, value }) => [type, value]),
  );
  const of = (type: Intl.DateTimeFormatPartTypes) => parts.get(type) ?? '';
  return `${of('weekday')} ${of('month')} ${of('day')}, ${of('year')}, ${of('hour')}:${of('minute')} ${of('dayPeriod')} ${zoneName}`;
}
const arizona = (at: number) => local(at, 'America/Phoenix', 'MST');
const nebraska = (at: number) => local(at, 'America/Chicago', 'CDT');

describe('the printed cover', () => {
  checkWith(pdftotext, 'names the ends of the transit window, its length and the refusal', () => {
    const cover = even(layout('-f', '1', '-l', '1'));
    expect(cover).toContain(length(custody.to - custody.from));
    expect(cover).toContain(arizona(custody.from));
    expect(cover).toContain(nebraska(custody.to));
    expect(cover).toContain(nebraska(refusedAt));
  });

  checkWith(pdftotext, 'weighs nothing, and no other page does', () => {
    expect(layout().match(/^ *(For|Against|Open)(?= {2,}\S)/gm)).toBeNull();
  });

  checkWith(pdftotext, 'says how warm the romaine was at both ends', () => {
    const cover = even(layout('-f', '1', '-l', '1'));
    for (const group of pulps().filter(({ line }) => line === 'romaine'))
      expect(cover).toContain(` ${Math.max(...group.values).toFixed(1)} °F `);
  });

  checkWith(pdftotext, 'says how long and how warm the rise without a cause was', () => {
    const longest = rises(channel('Return air (°F)')).reduce((a, b) =>
      b.to - b.from > a.to - a.from ? b : a,
    );
    const cover = even(layout('-f', '1', '-l', '1'));
    expect(cover).toContain(length(longest.to - longest.from));
    expect(cover).toContain(both(longest.peak));
  });
});

describe('the printed tables', () => {
  checkWith(pdftotext, 'mean, lowest and highest of each channel stand in its row', () => {
    const rows = rowsOf(layout());
    for (const [name, heading] of [
      ['Return air', 'Return air (°F)'],
      ['Supply air', 'Supply air (°F)'],
      ['Outside air', 'Ambient (°F)'],
      ['Set point', 'Set point (°F)'],
    ] as const) {
      const { mean, min, max } = summary(channel(heading));
      const wanted = `${name} ${both(mean)} ${both(min)} ${both(max)}`;
      expect(rows.filter((row) => row.trim().startsWith(wanted))).toHaveLength(1);
    }
  });

  checkWith(pdftotext, 'time above and below the band, and the share within it', () => {
    const rows = rowsOf(layout());
    const { within, known, above } = summary(channel('Return air (°F)'));
    const row = rows.find((one) => /^ ?Return air .*100% ?$/.test(one)) ?? '';
    expect(row).toContain(` ${((within / known) * 100).toFixed(1)}% `);
    expect(row).toContain(` ${length(above * 3_600_000)} `);
  });

  checkWith(pdftotext, 'every excursion has its start, length, peak and degree-hours', () => {
    const rows = rowsOf(layout());
    const found = rises(channel('Return air (°F)'));
    expect(found).toHaveLength(10);
    const wanted = (one: Rise, number: number) =>
      `${number} Above ${arizona(one.from)} ${length(one.to - one.from)} ${both(one.peak)} ${degreeHours(one.degreeHours)}`;
    for (const [i, one] of found.entries())
      expect(rows.filter((row) => row.trim().startsWith(wanted(one, i + 1)))).toHaveLength(1);
  });

  checkWith(pdftotext, 'count, lowest, highest and mean of each line’s pulps', () => {
    const text = rowsOf(layout());
    for (const { values, mean, within } of pulps()) {
      const numbers = [
        values.length,
        ...[Math.min(...values), mean, Math.max(...values)].map((one) => `${one.toFixed(1)} °F`),
        `${within} / ${values.length}`,
      ].join(' ');
      expect(text.some((row) => row.replace(/(\d) ?\/ ?(\d)/g, '$1 / $2').includes(numbers))).toBe(true);
    }
  });

  checkWith(pdftotext, 'these checks do find a wrong number', () => {
    expect(even(layout())).not.toContain(both(45.1));
    expect(even(layout())).not.toContain(arizona(custody.from + 60_000));
  });
});

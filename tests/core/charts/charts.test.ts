import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { placeMarks } from '../../../src/core/charts/leaders.js';
import { curves } from '../../../src/core/charts/reduce.js';
import { escapeXml, label, widthOf } from '../../../src/core/charts/svg.js';
import { temperatureChart } from '../../../src/core/charts/temperature.js';
import { timeTicks } from '../../../src/core/charts/time-axis.js';
import { timelinePicture } from '../../../src/core/charts/timeline.js';
import type { EvidenceId } from '../../../src/core/model/evidence.js';
import type { Zone } from '../../../src/core/model/time.js';
import { formatFor } from '../../../src/core/words/format.js';
import { DOORS_CLOSED, HOUR, MINUTE, sampleLog, sampleTemperatures } from '../../compose/sample-log.js';

const format = formatFor({ temperature: '°F', language: 'en' }, { zoneUnknown: '', notKnown: '' });
const labels = Object.assign((key: string) => key, { find: (key: string) => key });

describe('a curve reduced to the columns of the picture', () => {
  const span = { from: 0, to: 1000 };

  it('keeps the one extreme value among thousands', () => {
    const times = Array.from({ length: 1000 }, (_, i) => i);
    const values = times.map((i) => (i === 617 ? 50 : 2));
    const [run = []] = curves(times, values, span, 10, 20);
    expect(run.length).toBeLessThan(100);
    expect(run).toContainEqual([617, 50]);
  });

  it('keeps lowest and highest, and the order of time, whatever the values', () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: -30, max: 50, noNaN: true }), { minLength: 2, maxLength: 600 }),
        (values) => {
          const times = values.map((_, i) => i);
          const kept = curves(times, values, { from: 0, to: values.length }, 5, 10).flat();
          expect(Math.min(...kept.map((p) => p[1]))).toBe(Math.min(...values));
          expect(Math.max(...kept.map((p) => p[1]))).toBe(Math.max(...values));
          expect(kept.map((p) => p[0])).toEqual(kept.map((p) => p[0]).sort((a, b) => a - b));
        },
      ),
    );
  });

  it('stays open over a gap, and joins over a step within the limit', () => {
    expect(curves([0, 10, 21, 31], [1, 1, 1, 1], span, 10, 5)).toHaveLength(2);
    expect(curves([0, 10, 20], [1, Number.NaN, 1], span, 30, 5)).toHaveLength(1);
    expect(curves([0, 10, 40], [1, Number.NaN, 1], span, 30, 5)).toHaveLength(2);
    expect(curves([-5, 2000], [1, 1], span, 30, 5)).toEqual([]);
  });
});

describe('hours of the axis', () => {
  it('are whole local hours, with the days marked', () => {
    const ticks = timeTicks(DOORS_CLOSED, DOORS_CLOSED + 46 * HOUR, 'America/Phoenix' as Zone, 10);
    expect(ticks.map((tick) => format.clock(tick.at, 'America/Phoenix' as Zone))).toContain('12:00 AM');
    expect(ticks.filter((tick) => tick.day)).toHaveLength(2);
    expect(ticks.length).toBeLessThanOrEqual(10);
  });

  it('follow the day on which clocks go forward: 24 local hours in 23', () => {
    // 8 March 2026, 2:00 AM in Chicago does not exist (IANA tz database).
    const zone = 'America/Chicago' as Zone;
    const from = Date.parse('2026-03-08T06:00:00Z');
    const ticks = timeTicks(from, from + 23 * HOUR, zone, 4);
    expect(ticks.map((tick) => format.clock(tick.at, zone))).toEqual([
      '12:00 AM',
      '6:00 AM',
      '12:00 PM',
      '6:00 PM',
      '12:00 AM',
    ]);
  });

  it('never run away on long spans', () => {
    expect(timeTicks(0, 400 * 24 * HOUR, 'UTC' as Zone, 10).length).toBeLessThanOrEqual(12);
  });
});

describe('words of marks', () => {
  const marks = fc.array(
    fc.record({ at: fc.integer({ min: 0, max: 500 }), label: fc.stringMatching(/^[a-z ]{1,18}$/) }),
    { maxLength: 14 },
  );

  it('never lie on each other, and no line cuts through them', () => {
    fc.assert(
      fc.property(marks, (given) => {
        const placed = placeMarks(given, (at) => at, 250, 7, 20);
        const boxes = placed.map((one) => {
          const wide = widthOf(one.mark.label, 7) + 3;
          return one.anchor === 'start' ? [one.x + 3, one.x + wide] : [one.x - wide, one.x - 3];
        });
        placed.forEach((a, i) => {
          placed.forEach((b, j) => {
            if (i === j || a.row === undefined || b.row === undefined) return;
            const [left = 0, right = 0] = boxes[i] ?? [];
            const [otherLeft = 0, otherRight = 0] = boxes[j] ?? [];
            if (a.row === b.row) expect(otherLeft < right && otherRight > left).toBe(false);
            // The line of b rises from the axis to its own row.
            if (b.row > a.row && a.anchor === b.anchor) expect(b.x > left && b.x < right).toBe(false);
          });
        });
      }),
    );
  });

  it('are left out, with their mark kept, when the rows are full', () => {
    const placed = placeMarks(
      Array.from({ length: 9 }, () => ({ at: 10, label: 'same place' })),
      (at) => at,
      250,
      7,
      4,
    );
    expect(placed).toHaveLength(9);
    expect(placed.filter((one) => one.row !== undefined)).toHaveLength(4);
  });
});

describe('the temperature chart', () => {
  const log = sampleLog('e1' as EvidenceId);
  const result = sampleTemperatures('e1' as EvidenceId, 'e2' as EvidenceId, 'e3' as EvidenceId);
  const chart = (more: object = {}) =>
    temperatureChart(
      { result, log, zone: 'America/Phoenix' as Zone, marks: [], numbered: new Map([['x3', 3]]), ...more },
      format,
      labels,
    );

  it('keeps its words as text, in the fonts of the page, without filters', () => {
    const drawn = chart({ marks: [{ at: DOORS_CLOSED + HOUR, label: 'Stopped <here> & "there"' }] });
    expect(drawn).toContain('font-family="Source Sans 3"');
    expect(drawn).toContain(escapeXml('Stopped <here> & "there"'));
    expect(drawn).not.toMatch(/<filter|<script|NaN|undefined|Infinity/);
  });

  it('numbers only the excursions of the table', () => {
    expect(chart()).toContain(label(0, 0, '3').replace(/^.*?>/, '>'));
    expect(chart({ numbered: new Map() }).match(/>3<\/text>/)).toBeNull();
  });

  it.each([
    ['no band', { result: { ...result, band: undefined, excursions: [] } }],
    [
      'no known value',
      { log: { ...log, channels: { 'return-air': Float64Array.from(log.times, () => Number.NaN) } } },
    ],
    [
      'one row',
      {
        log: {
          ...log,
          times: Float64Array.of(DOORS_CLOSED + MINUTE),
          channels: { 'return-air': Float64Array.of(2) },
        },
      },
    ],
    [
      'a custody of no length',
      { result: { ...result, custody: { from: result.custody.from, to: result.custody.from } } },
    ],
  ])('can be drawn with %s', (_, more) => {
    expect(chart(more)).not.toMatch(/NaN|undefined|Infinity/);
  });
});

describe('the names of the zones under the timeline', () => {
  it.each([
    ['America/Phoenix', 'America/Chicago'],
    ['Asia/Kolkata', 'America/St_Johns'],
  ])('%s and %s stand clear of the hours, wherever the first of them is', (zone, otherZone) => {
    for (let minutes = 0; minutes < 60; minutes += 5) {
      const from = Date.UTC(2026, 6, 14, 11) + minutes * MINUTE;
      const items = [0, 10].map((hours) => ({
        is: 'photo' as const,
        at: from + hours * HOUR,
        evidence: 'e1' as EvidenceId,
        uncertaintySeconds: 1,
        label: 'photo',
        zone: zone as Zone,
      }));
      const picture = { items, name: () => '', bars: [], zone: zone as Zone, otherZone: otherZone as Zone };
      const drawn = timelinePicture(picture, format, labels);
      const words = [...drawn.matchAll(/<text([^>]*)>([^<]*)</g)].map(([, attributes = '', text = '']) => {
        const of = (name: string) => new RegExp(` ${name}="([^"]*)"`).exec(attributes)?.[1] ?? '';
        const wide = widthOf(text, Number(of('font-size')));
        const before = of('text-anchor') === 'end' ? wide : of('text-anchor') === 'middle' ? wide / 2 : 0;
        const left = Number(of('x')) - before;
        return { y: of('y'), left, right: left + wide, text };
      });
      expect(words.length).toBeGreaterThan(8);
      for (const one of words)
        for (const other of words)
          if (one !== other && one.y === other.y && one.left <= other.left)
            expect([one.text, other.text, one.right <= other.left]).toEqual([one.text, other.text, true]);
      expect(Math.min(...words.map(({ left }) => left))).toBeGreaterThanOrEqual(0);
    }
  });
});

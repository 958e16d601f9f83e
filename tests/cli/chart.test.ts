import { describe, expect, it } from 'vitest';
import { chartLines } from '../../src/cli/lists/chart.js';
import { terminalFormat } from '../../src/cli/quantities.js';
import { bandsOf } from '../../src/core/assess/bands.js';
import { readMilestones } from '../../src/core/assess/milestones.js';
import { temperatureResult } from '../../src/core/assess/temperature/result.js';
import { at, DAY_START, HOUR, items, log, rulesOf, state } from '../core/assess/made.js';

const hours = Array.from({ length: 41 }, (_, i) => i / 4);

function chart(air: (hour: number) => number, ascii: boolean) {
  const made = state(
    items(
      { kind: 'event', event: 'doors-closed', place: { stop: 'load-1' }, time: at(0) },
      { kind: 'event', event: 'doors-opened', place: { stop: 'drop-1' }, time: at(10) },
    ),
  );
  const of = log(hours, { 'return-air': hours.map(air) });
  const result = temperatureResult(
    of,
    readMilestones(made, DAY_START + 100 * HOUR),
    bandsOf(made.delivery.lines, rulesOf({ needs: { event: 'arrived' } })),
  );
  if (result === undefined) throw new Error('no result');
  return chartLines(result, of, { format: terminalFormat('°F'), width: 60, ascii });
}
const peak = (h: number) => (h >= 4 && h <= 6 ? 50 : 36);

describe('the chart on a terminal', () => {
  it('is plain ASCII where that is asked for, but for the unit', () => {
    const lines = chart(peak, true);
    expect(lines).toHaveLength(10);
    expect(lines.join('\n').replaceAll('°', '')).toMatch(/^[\x20-\x7e\n]*$/);
    expect(lines.every((line) => line.length <= 60)).toBe(true);
  });

  it('shows the peak at its place and marks what is outside', () => {
    const lines = chart(peak, true);
    const first = (lines[0] ?? '').indexOf('*');
    const strip = lines.at(-1) ?? '';
    // 51 columns after the labels: four of ten hours in is column 20.
    expect(first).toBeGreaterThanOrEqual(9 + 19);
    expect(first).toBeLessThanOrEqual(9 + 22);
    expect(strip.trim()).toMatch(/^\^{10,14}$/);
  });

  it('leaves unknown time blank and marks it', () => {
    const lines = chart((h) => (h > 3 && h < 7 ? Number.NaN : 36), true);
    expect(lines.at(-1)?.trim()).toMatch(/^\?{19,23}$/);
    for (const line of lines.slice(0, -1)) expect(line.slice(9 + 17, 9 + 34)).not.toContain('*');
  });

  it('uses braille dots elsewhere', () => {
    expect(chart(peak, false).join('')).toMatch(/[\u2801-\u28ff]/);
  });

  it('of a log without values is nothing', () => {
    expect(chart(() => Number.NaN, true)).toEqual([]);
  });
});

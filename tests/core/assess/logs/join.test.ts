import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { joinLogs, sourceLogOf } from '../../../../src/core/assess/logs/join.js';
import type { Channel } from '../../../../src/core/model/evidence.js';
import { evidenceId } from '../../../../src/core/model/evidence.js';
import { omitUndefined } from '../../../../src/core/model/omit-undefined.js';
import { zone } from '../../../../src/core/model/time.js';
import type { UnitLog } from '../../../../src/core/model/unit-log.js';
import { cases } from '../../../properties.js';

const START = Date.UTC(2026, 6, 14, 12);
const MINUTE = 60_000;

interface Made {
  /** Minutes after the start, and °C of the return air. */
  rows: readonly (readonly [minute: number, celsius: number])[];
  channel?: Channel;
  mode?: readonly string[];
  stated?: UnitLog['stated'];
}

let made = 0;
function log({ rows, channel = 'return-air', mode, stated }: Made): UnitLog {
  made += 1;
  return {
    evidence: evidenceId.parse(`e${made}`),
    zone: zone.parse('UTC'),
    times: Float64Array.from(rows, ([minute]) => START + minute * MINUTE),
    channels: { [channel]: Float64Array.from(rows, ([, celsius]) => celsius) },
    states: omitUndefined({ mode }),
    rows: Float64Array.from(rows, (_, i) => i + 2),
    ...omitUndefined({ stated }),
    problems: [],
    problemCount: 0,
    addedSeconds: 0,
  };
}
const steady = (from: number, to: number, step = 5, celsius = (m: number) => 2 + Math.sin(m)): Made['rows'] =>
  Array.from({ length: Math.floor((to - from) / step) + 1 }, (_, i) => [
    from + i * step,
    celsius(from + i * step),
  ]);
const minutes = (one: UnitLog | undefined) => [...(one?.times ?? [])].map((t) => (t - START) / MINUTE);

describe('two downloads of one unit', () => {
  it('that overlap are one log without a moment twice', () => {
    const [a, b] = [log({ rows: steady(0, 60) }), log({ rows: steady(30, 120) })];
    const { joined, overlaps, disagreementCount } = joinLogs([a, b]);
    expect(joined).toHaveLength(1);
    expect(minutes(joined[0])).toEqual(steady(0, 120).map(([m]) => m));
    expect(overlaps).toMatchObject([
      { logs: [a.evidence, b.evidence], sharedRows: 7, agreeingRows: 7, joined: true },
    ]);
    expect(disagreementCount).toBe(0);
  });

  it('keep for every row the file that it comes from', () => {
    const [a, b] = [log({ rows: steady(0, 10) }), log({ rows: steady(5, 20) })];
    const [one] = joinLogs([a, b]).joined;
    if (one === undefined) throw new Error('no log');
    expect(one.joinedFrom?.evidence).toEqual([a.evidence, b.evidence]);
    expect(minutes(one).map((_, i) => [sourceLogOf(one, i), one.rows.at(i)])).toEqual([
      [a.evidence, 2],
      [a.evidence, 3],
      [a.evidence, 4],
      [b.evidence, 4],
      [b.evidence, 5],
    ]);
  });

  it('that continue each other are one log', () => {
    const { joined, overlaps } = joinLogs([log({ rows: steady(0, 60) }), log({ rows: steady(65, 120) })]);
    expect(joined).toHaveLength(1);
    expect(overlaps).toEqual([]);
  });

  it('with a long time between them stay two, unless both name the same unit', () => {
    const rows = [steady(0, 60), steady(300, 360)] as const;
    expect(joinLogs(rows.map((r) => log({ rows: r }))).joined).toHaveLength(2);
    const stated = { unit: 'U-7' };
    expect(joinLogs(rows.map((r) => log({ rows: r, stated }))).joined).toHaveLength(1);
  });

  it('fill what the other lacks', () => {
    const a = log({
      rows: [
        [0, 2],
        [5, Number.NaN],
        [10, 2],
      ],
      mode: ['Cool', '', 'Cool'],
    });
    const b = log({
      rows: [
        [0, 2],
        [5, 3],
        [10, 2],
      ],
      mode: ['', 'Defrost', ''],
    });
    const [one] = joinLogs([a, b]).joined;
    expect([...(one?.channels['return-air'] ?? [])]).toEqual([2, 3, 2]);
    expect([...(one?.states.mode ?? [])]).toEqual(['Cool', 'Defrost', 'Cool']);
  });

  it('that disagree in some rows are joined, the first taken in counts, and the rows are named', () => {
    const later = steady(30, 120).map(([m, c]) => (m === 45 ? ([m, c - 5] as const) : ([m, c] as const)));
    const [a, b] = [log({ rows: later }), log({ rows: steady(0, 60) })];
    const { joined, disagreements, disagreementCount } = joinLogs([a, b]);
    expect(disagreementCount).toBe(1);
    expect(disagreements).toMatchObject([
      {
        at: START + 45 * MINUTE,
        counts: { log: a.evidence, row: 5 },
        other: { log: b.evidence, row: 11 },
        differences: [{ channel: 'return-air', first: 2 + Math.sin(45) - 5, second: 2 + Math.sin(45) }],
      },
    ]);
    expect(joined[0]?.channels['return-air']?.at(9)).toBeCloseTo(2 + Math.sin(45) - 5);
  });

  it('written once in tenths of °F and once in tenths of °C agree', () => {
    const fahrenheit = steady(0, 60).map(
      ([m, c]) => [m, ((Math.round(((c * 9) / 5) * 10) / 10) * 5) / 9] as const,
    );
    const tenths = steady(0, 60).map(([m, c]) => [m, Math.round(c * 10) / 10] as const);
    expect(joinLogs([log({ rows: fahrenheit }), log({ rows: tenths })]).overlaps).toMatchObject([
      { sharedRows: 13, agreeingRows: 13, joined: true },
    ]);
  });
});

describe('logs of two instruments stay two', () => {
  it.each([
    ['their values differ', { rows: steady(0, 60, 5, () => 8), channel: 'return-air' }],
    ['their moments differ', { rows: steady(2, 62), channel: 'return-air' }],
    ['their columns differ', { rows: steady(0, 60), channel: 'probe' }],
    [
      'they name different recorders',
      { rows: steady(0, 60), channel: 'return-air', stated: { recorder: 'R-2' } },
    ],
  ] as const)('when %s', (_, other) => {
    const { joined, overlaps } = joinLogs([
      log({ rows: steady(0, 60), stated: { recorder: 'R-1' } }),
      log(other),
    ]);
    expect(joined).toHaveLength(2);
    expect(overlaps.some((one) => one.joined)).toBe(false);
  });
});

describe('laws', () => {
  const cut = fc.record({
    length: fc.integer({ min: 1, max: 60 }),
    cuts: fc.array(fc.tuple(fc.nat(59), fc.nat(59)), { maxLength: 5 }),
  });
  it('pieces of one log, cut anywhere with overlap, in any order, give that log again', () => {
    fc.assert(
      fc.property(cut, fc.infiniteStream(fc.nat(1000)), ({ length, cuts }, order) => {
        const rows = steady(0, (length - 1) * 5);
        const bounds = cuts.map(([x, y]) => [Math.min(x, y) % length, Math.max(x, y) % length] as const);
        const pieces = [[0, length - 1] as const, ...bounds]
          .map(([x, y]) => ({
            piece: rows.slice(Math.min(x, y), Math.max(x, y) + 1),
            key: order.next().value ?? 0,
          }))
          .sort((a, b) => a.key - b.key);
        const { joined, disagreementCount } = joinLogs(pieces.map(({ piece }) => log({ rows: piece })));
        expect(joined).toHaveLength(1);
        expect(minutes(joined[0])).toEqual(rows.map(([m]) => m));
        expect([...(joined[0]?.channels['return-air'] ?? [])]).toEqual(rows.map(([, c]) => c));
        expect(disagreementCount).toBe(0);
      }),
      { numRuns: cases(60) },
    );
  });

  it('no logs, empty logs and one log come back as they are', () => {
    const [empty, one] = [log({ rows: [] }), log({ rows: steady(0, 10) })];
    expect(joinLogs([]).joined).toEqual([]);
    expect(joinLogs([empty, one]).joined).toEqual([empty, one]);
  });
});

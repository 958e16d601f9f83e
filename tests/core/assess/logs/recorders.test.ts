import { describe, expect, it } from 'vitest';
import { recordersOf } from '../../../../src/core/assess/logs/recorders.js';
import type { EvidenceId } from '../../../../src/core/model/evidence.js';
import type { UnitLog } from '../../../../src/core/model/unit-log.js';
import { DAY_START, HOUR, items, log, state } from '../made.js';

const WINDOW = { from: DAY_START, to: DAY_START + 48 * HOUR };
const MINUTE = 60_000;

/** Chance from a seed (Park and Miller, 1988), so that a failure can be made again. */
function chance(seed: number): () => number {
  let state = (seed % 2_147_483_646) + 1;
  return () => {
    state = (state * 48_271) % 2_147_483_647;
    return state / 2_147_483_647;
  };
}

/** Degrees Celsius over true hours: bumps of defrosts and doors at times of chance. */
function trueAir(next: () => number): (hour: number) => number {
  const bumps = Array.from({ length: 14 }, () => ({
    at: next() * 48,
    size: 2 + 4 * next(),
    width: 0.2 + 0.3 * next(),
  }));
  return (hour) =>
    2 + bumps.reduce((sum, { at, size, width }) => sum + size * Math.exp(-(((hour - at) / width) ** 2)), 0);
}

/** A log of an hour before the trip to an hour after it; `clock` gives what its clock says at a true hour. */
function recorded(
  evidence: string,
  channel: 'return-air' | 'probe',
  air: (hour: number) => number,
  { step = 5, clock = (hour: number) => hour, change = (value: number) => value } = {},
): UnitLog {
  const hours = Array.from({ length: Math.floor((50 * 60) / step) }, (_, i) => -1 + (i * step) / 60);
  const rows = hours.map((hour, i) => ({ at: clock(hour), value: change(air(hour)), row: i + 2 }));
  const inOrder = rows.toSorted((a, b) => a.at - b.at || a.row - b.row);
  const once = inOrder.filter((row, i) => row.at !== inOrder[i - 1]?.at);
  return {
    ...log(
      once.map(({ at }) => at),
      { [channel]: once.map(({ value }) => value) },
      {},
      '°C',
    ),
    evidence: evidence as EvidenceId,
    rows: Float64Array.from(once, ({ row }) => row),
  };
}

const of = (logs: UnitLog[], evidence = items()) => recordersOf(state(evidence), logs, WINDOW);

describe('recorders beside each other', () => {
  it('are told only where there is more than the log of the unit', () => {
    const air = trueAir(chance(1));
    expect(of([recorded('e1', 'return-air', air)])).toBeUndefined();
    expect(of([recorded('e1', 'return-air', air), recorded('e2', 'probe', air)])?.identities).toEqual([
      { log: 'e1', instrument: 'unit', evidence: ['e1'] },
      { log: 'e2', instrument: 'recorder', evidence: ['e2'] },
    ]);
  });

  it('have serial number, owner and place of the instrument on record', () => {
    const air = trueAir(chance(1));
    const logs = [
      recorded('e1', 'return-air', air),
      { ...recorded('e2', 'probe', air), stated: { recorder: 'rx-88 12' } },
      recorded('e3', 'probe', air),
    ];
    const owner = { party: 'shipper' as const };
    const recorder = { kind: 'instrument' as const, type: 'recorder' as const };
    const evidence = items(
      { ...recorder, name: 'RX-8812', owner, where: 'pallet R-03', documents: [] },
      {
        ...recorder,
        name: 'B',
        serial: '77',
        owner: { party: 'receiver', name: 'Plains Depot' },
        documents: ['e3' as EvidenceId],
      },
    ).map((item, i) => ({ ...item, evidence: `e${i + 8}` as EvidenceId }));
    expect(of(logs, evidence)?.identities.slice(1)).toEqual([
      {
        log: 'e2',
        instrument: 'recorder',
        serial: 'rx-88 12',
        place: 'pallet R-03',
        owner: 'shipper',
        evidence: ['e2', 'e8'],
      },
      { log: 'e3', instrument: 'recorder', serial: '77', owner: 'Plains Depot', evidence: ['e3', 'e9'] },
    ]);
  });

  it.each<[string, (value: number) => number, string]>([
    ['in one air agree', (value) => value + 0.4, 'agree'],
    ['five degrees apart disagree', (value) => value + 5, 'disagree'],
  ])('%s, and neither is corrected', (_, change, verdict) => {
    const air = trueAir(chance(2));
    const [one] =
      of([recorded('e1', 'return-air', air), recorded('e2', 'probe', air, { change })])?.comparisons ?? [];
    expect(one).toMatchObject({ verdict, moved: false });
    expect(one?.difference.mean).toBeCloseTo(air(3) - change(air(3)), 6);
  });

  it('whose clocks are apart are compared on one clock', () => {
    const air = trueAir(chance(3));
    const slow = recorded('e2', 'probe', air, { clock: (hour) => hour - 1.5 });
    const [one] = of([recorded('e1', 'return-air', air), slow])?.comparisons ?? [];
    expect(one?.moved).toBe(true);
    expect(one?.clock?.seconds).toBeCloseTo(5400, -2);
    expect(one?.verdict).toBe('agree');
    expect(one?.difference.apartSeconds).toBe(0);
  });

  it('show where the clock of one was set, back or forward, within what is told: 200 made trips', () => {
    let [told, silent] = [0, 0];
    for (let seed = 1; seed <= 200; seed++) {
      const next = chance(seed + 100);
      const air = trueAir(next);
      const at = 14 + Math.floor(next() * 20);
      const by = (next() < 0.5 ? -1 : 1) * (0.5 + next() * 1.5);
      const unit = recorded('e1', 'return-air', air, { clock: (hour) => (hour >= at ? hour + by : hour) });
      const first = unit.rows.length;
      const row = 2 + (at + 1) * 12;
      const from = DAY_START + (at - 5 / 60) * HOUR;
      const to = DAY_START + (at + by) * HOUR;
      // What the reader of the file finds by the order of rows, where the clock was put back.
      const clockSteps =
        by < 0 ? [{ row, from, to, seconds: by * 3600, uncertaintySeconds: 300, hiddenRows: 0 }] : [];
      const found =
        of([{ ...unit, clockSteps }, recorded('e2', 'probe', air)])?.comparisons[0]?.clockSteps ?? [];
      expect(first).toBeGreaterThan(500);
      if (found.length === 0) {
        silent += 1;
        continue;
      }
      told += 1;
      expect(
        found.map(({ log: whose }) => whose),
        `seed ${seed}`,
      ).toEqual(['e1']);
      const [one] = found;
      expect(Math.abs((one?.seconds ?? 0) - by * 3600), `seed ${seed}`).toBeLessThanOrEqual(
        one?.uncertaintySeconds ?? 0,
      );
      expect(Math.abs((one?.at ?? 0) - from), `seed ${seed}`).toBeLessThanOrEqual(5 * MINUTE);
    }
    expect(told).toBeGreaterThanOrEqual(170);
    expect(silent).toBeLessThanOrEqual(30);
  });

  it('show no set clock where there is a break alone: 200 made trips', () => {
    for (let seed = 1; seed <= 200; seed++) {
      const next = chance(seed + 900);
      const air = trueAir(next);
      const whole = recorded('e1', 'return-air', air);
      const at = 14 + next() * 20;
      const kept = [...whole.times.keys()].filter((i) => {
        const hour = ((whole.times[i] ?? 0) - DAY_START) / HOUR;
        return hour < at || hour > at + 1.5;
      });
      const pick = (column: Float64Array) => Float64Array.from(kept, (i) => column[i] ?? Number.NaN);
      const broken = {
        ...whole,
        times: pick(whole.times),
        rows: pick(whole.rows),
        channels: { 'return-air': pick(whole.channels['return-air'] ?? new Float64Array()) },
      };
      const found = of([broken, recorded('e2', 'probe', air)])?.comparisons[0]?.clockSteps;
      expect(found, `seed ${seed}`).toEqual([]);
    }
  });
});

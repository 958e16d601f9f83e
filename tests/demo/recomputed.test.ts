import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, it } from 'vitest';
import { z } from 'zod';
import { dossierHere } from '../cli/run.js';
import { attachedTo } from './attached.js';
import { type BuiltDemo, builtDemo } from './demo.js';
import { channel, custody, HIGH, LOW, notes, pulps, rises, summary } from './raw.js';

const summaryShape = z.object({
  channel: z.string(),
  mean: z.number(),
  min: z.object({ value: z.number(), at: z.number() }),
  max: z.object({ value: z.number(), at: z.number() }),
  knownSeconds: z.number(),
  coverage: z.number(),
  inBandSeconds: z.number(),
  aboveSeconds: z.number(),
  belowSeconds: z.number(),
  degreeHoursAbove: z.number(),
  degreeHoursBelow: z.number(),
  samples: z.number(),
});
const excursionShape = z.object({
  id: z.string(),
  channel: z.string(),
  side: z.string(),
  from: z.number(),
  to: z.number(),
  seconds: z.number(),
  peak: z.number(),
  peakAt: z.number(),
  degreeHours: z.number(),
  cause: z.object({ is: z.string() }),
});
const answer = z.object({
  temperatures: z.tuple([
    z.object({
      custody: z.object({ from: z.object({ at: z.number() }), to: z.object({ at: z.number() }) }),
      band: z.object({ low: z.number(), high: z.number() }),
      channels: z.array(summaryShape),
      judged: z.string(),
      excursions: z.array(excursionShape),
      gaps: z.array(z.unknown()),
    }),
  ]),
  pulps: z.array(
    z.object({
      line: z.string(),
      stop: z.string(),
      count: z.number(),
      min: z.number(),
      max: z.number(),
      mean: z.number(),
      inBand: z.number(),
      readings: z.array(z.object({ celsius: z.number(), at: z.number(), verdict: z.string() })),
    }),
  ),
});

let demo: BuiltDemo['demo'];
let said: z.infer<typeof answer>;
let attached: Map<string, Buffer>;
beforeAll(async () => {
  const { demo: made, built } = await builtDemo();
  demo = made;
  attached = await attachedTo(readFileSync(built.file));
  const ran = await dossierHere(['temps', demo.folder, '--json']);
  expect(ran.code).toBe(0);
  said = answer.parse(JSON.parse(ran.out));
});

/** °F = °C × 9/5 + 32, and a difference without the 32. */
const fahrenheit = (celsius: number) => celsius * 1.8 + 32;
const degreesF = (kelvin: number) => kelvin * 1.8;
const told = (name: string) => {
  const found = said.temperatures[0].channels.find((one) => one.channel === name);
  if (found === undefined) throw new Error(`no ${name}`);
  return found;
};

/** Rows of an attached CSV by their headings; its cells hold no commas or quotes here. */
function table(name: string): Record<string, string>[] {
  const [head = '', ...rows] = (attached.get(name) ?? Buffer.alloc(0))
    .toString('utf8')
    .trimEnd()
    .split('\r\n');
  const headings = head.split(',');
  return rows.map((row) => Object.fromEntries(row.split(',').map((cell, i) => [headings[i] ?? '', cell])));
}

describe('custody and band', () => {
  it('run from doors closed in Arizona to doors opened in Nebraska: 46 h 21 min', () => {
    const { from, to } = said.temperatures[0].custody;
    expect([from.at, to.at]).toEqual([custody.from, custody.to]);
    expect((to.at - from.at) / 60_000).toBe(46 * 60 + 21);
  });

  it('are what the bill says', () => {
    const { low, high } = said.temperatures[0].band;
    expect(fahrenheit(low)).toBeCloseTo(LOW, 9);
    expect(fahrenheit(high)).toBeCloseTo(HIGH, 9);
  });
});

describe.each([
  ['return-air', 'Return air (°F)'],
  ['supply-air', 'Supply air (°F)'],
  ['ambient', 'Ambient (°F)'],
  ['set-point', 'Set point (°F)'],
])('%s over custody', (name, heading) => {
  const mine = summary(channel(heading));

  it('has the lowest, highest and time-weighted mean value of the file', () => {
    const one = told(name);
    expect(fahrenheit(one.min.value)).toBeCloseTo(mine.min, 9);
    expect(fahrenheit(one.max.value)).toBeCloseTo(mine.max, 9);
    expect(fahrenheit(one.mean)).toBeCloseTo(mine.mean, 3);
  });

  it('is known all the time', () => {
    const one = told(name);
    expect(one.knownSeconds / 3600).toBeCloseTo(mine.known, 9);
    expect(one.coverage).toBe(1);
    expect(said.temperatures[0].gaps).toEqual([]);
  });

  it('counts the samples within custody, without sensor faults', () => {
    const within = channel(heading).filter(([at]) => at >= custody.from && at <= custody.to);
    expect(told(name).samples).toBe(within.length);
  });

  it('is attached as channels.csv with the same numbers', () => {
    const row = table('channels.csv').find((one) => one.channel === name);
    expect(fahrenheit(Number(row?.mean_celsius))).toBeCloseTo(mine.mean, 3);
    expect(fahrenheit(Number(row?.min_celsius))).toBeCloseTo(mine.min, 9);
    expect(fahrenheit(Number(row?.max_celsius))).toBeCloseTo(mine.max, 9);
    expect(Number(row?.coverage)).toBe(1);
  });
});

/** Ambient air and the set point are held against no band. */
describe.each([
  ['return-air', 'Return air (°F)'],
  ['supply-air', 'Supply air (°F)'],
])('%s against the band', (name, heading) => {
  it('spends its time within, above and below as sums over seconds have it', () => {
    const one = told(name);
    const mine = summary(channel(heading));
    // Each crossing is off by up to half a step, to either side.
    expect(Math.abs(one.inBandSeconds - mine.within * 3600)).toBeLessThan(20);
    expect(Math.abs(one.aboveSeconds - mine.above * 3600)).toBeLessThan(20);
    expect(Math.abs(one.belowSeconds - mine.below * 3600)).toBeLessThan(20);
    expect(degreesF(one.degreeHoursAbove)).toBeCloseTo(mine.degreesAbove, 2);
    expect(degreesF(one.degreeHoursBelow)).toBeCloseTo(mine.degreesBelow, 2);
  });
});

describe('excursions of return air', () => {
  const mine = rises(channel('Return air (°F)'));

  it('are ten, all above the band', () => {
    expect(said.temperatures[0].judged).toBe('return-air');
    expect(mine).toHaveLength(10);
    expect(said.temperatures[0].excursions.map((one) => [one.channel, one.side])).toEqual(
      mine.map(() => ['return-air', 'above']),
    );
    expect(summary(channel('Return air (°F)')).below).toBe(0);
  });

  it('begin and end where the lines between samples meet 38 °F, to the second', () => {
    for (const [i, one] of said.temperatures[0].excursions.entries()) {
      expect(Math.abs(one.from - (mine[i]?.from ?? 0))).toBeLessThan(1000);
      expect(Math.abs(one.to - (mine[i]?.to ?? 0))).toBeLessThan(1000);
      expect(one.seconds).toBeCloseTo(((mine[i]?.to ?? 0) - (mine[i]?.from ?? 0)) / 1000, 0);
    }
  });

  it('have the peaks and degree-hours of the file', () => {
    for (const [i, one] of said.temperatures[0].excursions.entries()) {
      expect(fahrenheit(one.peak)).toBeCloseTo(mine[i]?.peak ?? 0, 9);
      expect(one.peakAt).toBe(mine[i]?.peakAt);
      expect(degreesF(one.degreeHours)).toBeCloseTo(mine[i]?.degreeHours ?? 0, 6);
    }
  });

  it('together are the time above', () => {
    const sum = said.temperatures[0].excursions.reduce((total, one) => total + one.seconds, 0);
    expect(sum).toBeCloseTo(told('return-air').aboveSeconds, 3);
  });

  it('only one has no cause in the log: the rise of the second night', () => {
    const unexplained = said.temperatures[0].excursions.filter((one) => one.cause.is === 'unexplained');
    expect(unexplained.map((one) => new Date(one.from).toISOString().slice(0, 13))).toEqual([
      '2026-07-16T04',
    ]);
    expect(fahrenheit(unexplained[0]?.peak ?? 0)).toBeCloseTo(44.5, 9);
  });

  it('are attached as excursions.csv with the same numbers', () => {
    const rows = table('excursions.csv');
    expect(rows).toHaveLength(mine.length);
    rows.forEach((row, i) => {
      expect(Math.abs(Date.parse(row.from_utc ?? '') - (mine[i]?.from ?? 0))).toBeLessThan(1000);
      expect(Math.abs(Date.parse(row.to_utc ?? '') - (mine[i]?.to ?? 0))).toBeLessThan(1000);
      expect(fahrenheit(Number(row.peak_celsius))).toBeCloseTo(mine[i]?.peak ?? 0, 9);
      expect(degreesF(Number(row.kelvin_hours))).toBeCloseTo(mine[i]?.degreeHours ?? 0, 6);
    });
  });
});

describe('pulps', () => {
  it('are as many per line and stop as the notebook has, with its lowest, highest and mean', () => {
    const key = (one: { line: string; stop: string }) => `${one.line} ${one.stop}`;
    const mine = new Map(pulps().map((one) => [key(one), one]));
    expect(said.pulps.map(key).sort()).toEqual([...mine.keys()].sort());
    for (const group of said.pulps) {
      const own = mine.get(key(group));
      expect(group.count).toBe(own?.values.length);
      expect(fahrenheit(group.min)).toBeCloseTo(Math.min(...(own?.values ?? [])), 9);
      expect(fahrenheit(group.max)).toBeCloseTo(Math.max(...(own?.values ?? [])), 9);
      expect(fahrenheit(group.mean)).toBeCloseTo(own?.mean ?? 0, 9);
      expect(group.inBand).toBe(own?.within);
    }
  });

  it('each has its time and value of the notebook', () => {
    const mine = notes
      .filter((note) => note.kind === 'pulp')
      .map((note) => `${note.at} ${Number(note.value).toFixed(1)}`);
    const theirs = said.pulps.flatMap((group) =>
      group.readings.map((one) => `${one.at} ${fahrenheit(one.celsius).toFixed(1)}`),
    );
    expect(theirs.sort()).toEqual(mine.sort());
  });

  it('are attached as pulps.csv', () => {
    const theirs = table('pulps.csv').map(
      (row) => `${row.line} ${row.stop} ${fahrenheit(Number(row.celsius)).toFixed(1)}`,
    );
    const mine = pulps().flatMap((one) =>
      one.values.map((value) => `${one.line} ${one.stop} ${value.toFixed(1)}`),
    );
    expect(theirs.sort()).toEqual(mine.sort());
  });
});

describe('the log as attached', () => {
  it('is the file row by row, in UTC and °C', () => {
    const name = [...attached.keys()].find((key) => /^log-e\d+\.csv$/.test(key)) ?? '';
    const theirs = table(name).flatMap((row) =>
      row['return-air_celsius'] === ''
        ? []
        : [`${Date.parse(row.time_utc ?? '')} ${fahrenheit(Number(row['return-air_celsius'])).toFixed(1)}`],
    );
    const mine = channel('Return air (°F)').map(([at, value]) => `${at} ${value.toFixed(1)}`);
    expect(theirs).toEqual(mine);
  });
});

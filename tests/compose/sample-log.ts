import type { EvidenceId } from '../../src/core/model/evidence.js';
import type { TemperatureResult } from '../../src/core/model/results.js';
import { toCelsius } from '../../src/core/model/temperature.js';
import type { Zone } from '../../src/core/model/time.js';
import type { UnitLog } from '../../src/core/model/unit-log.js';

export const MINUTE = 60_000;
export const HOUR = 60 * MINUTE;
/** 6:10 AM in Phoenix. */
export const DOORS_CLOSED = Date.parse('2026-07-14T13:10:00Z');
export const DOORS_OPENED = Date.parse('2026-07-16T11:24:00Z');

const f = (fahrenheit: number) => toCelsius(fahrenheit, '°F');

/** Two days of a unit log at ten minutes, with pull-down, defrosts, a warm stretch and a gap. */
export function sampleLog(evidence: EvidenceId): UnitLog {
  const times: number[] = [];
  const back: number[] = [];
  const supply: number[] = [];
  const set: number[] = [];
  for (let at = DOORS_CLOSED - HOUR; at <= DOORS_OPENED + 20 * MINUTE; at += 10 * MINUTE) {
    const hours = (at - DOORS_CLOSED) / HOUR;
    if (hours > 30.2 && hours < 32.6) continue;
    const pull = hours < 0 ? 9 : 9 * Math.exp(-hours / 0.8);
    const defrost = Math.abs(hours - 14) < 0.35 || Math.abs(hours - 40) < 0.35 ? 8 : 0;
    const warm = hours > 20 && hours < 23 ? 6.5 * Math.sin(((hours - 20) / 3) * Math.PI) : 0;
    times.push(at);
    back.push(f(36.2 + pull + defrost + warm + 0.7 * Math.sin(hours * 2.1)));
    supply.push(f(34.1 + pull * 0.4 + defrost * 1.4 + warm * 0.8 + 0.9 * Math.sin(hours * 3.3)));
    set.push(f(36));
  }
  return {
    evidence,
    zone: 'America/Phoenix' as Zone,
    times: Float64Array.from(times),
    channels: {
      'return-air': Float64Array.from(back),
      'supply-air': Float64Array.from(supply),
      'set-point': Float64Array.from(set),
    },
    states: {},
    rows: Float64Array.from(times.map((_, i) => i + 2)),
    problems: [],
    problemCount: 0,
    addedSeconds: 0,
  };
}

/** What the log shows, written by hand for the pages; the computing is tested where it is done. */
export function sampleTemperatures(
  log: EvidenceId,
  closed: EvidenceId,
  opened: EvidenceId,
): TemperatureResult {
  const at = (hours: number) => DOORS_CLOSED + hours * HOUR;
  const transitWindow = {
    from: { at: DOORS_CLOSED, basis: 'doors-closed' as const, evidence: closed },
    to: { at: DOORS_OPENED, basis: 'doors-opened' as const, evidence: opened },
  };
  return {
    log,
    instrument: 'unit',
    transitWindow,
    custody: transitWindow,
    gapLimitSeconds: 1800,
    medianStepSeconds: 600,
    band: {
      low: f(34),
      high: f(38),
      setPoint: f(36),
      tolerance: 10 / 9,
      lines: ['romaine'],
      toleranceFrom: 'bill',
    },
    judged: 'return-air',
    channels: [
      {
        channel: 'return-air',
        mean: f(37.1),
        min: { value: f(35.5), at: at(9) },
        max: { value: f(45.2), at: at(0) },
        knownSeconds: 157_800,
        coverage: 0.948,
        inBandSeconds: 138_000,
        aboveSeconds: 19_800,
        belowSeconds: 0,
        degreeHoursAbove: 7.4,
        degreeHoursBelow: 0,
        samples: 272,
      },
      {
        channel: 'supply-air',
        mean: f(34.9),
        min: { value: f(33.2), at: at(4) },
        max: { value: f(46.9), at: at(14) },
        knownSeconds: 157_800,
        coverage: 0.948,
        inBandSeconds: 121_000,
        aboveSeconds: 14_100,
        belowSeconds: 22_700,
        degreeHoursAbove: 6.1,
        degreeHoursBelow: 1.2,
        samples: 272,
      },
      {
        channel: 'set-point',
        mean: f(36),
        min: { value: f(36), at: at(0) },
        max: { value: f(36), at: at(0) },
        knownSeconds: 157_800,
        coverage: 0.948,
        inBandSeconds: 157_800,
        aboveSeconds: 0,
        belowSeconds: 0,
        degreeHoursAbove: 0,
        degreeHoursBelow: 0,
        samples: 272,
      },
    ],
    excursions: [
      {
        id: 'x1',
        channel: 'return-air',
        side: 'above',
        from: at(0),
        to: at(1.5),
        seconds: 5400,
        peak: f(45.2),
        peakAt: at(0),
        degreeHours: 2.9,
        cause: { is: 'pull-down', how: 'inferred' },
        class: 'normal-operation',
        cutBy: ['window-start'],
      },
      {
        id: 'x2',
        channel: 'return-air',
        side: 'above',
        from: at(13.65),
        to: at(14.35),
        seconds: 2520,
        peak: f(44.8),
        peakAt: at(14),
        degreeHours: 1.6,
        cause: { is: 'defrost', how: 'logged' },
        class: 'normal-operation',
        cutBy: [],
      },
      {
        id: 'x3',
        channel: 'return-air',
        side: 'above',
        from: at(20.3),
        to: at(22.8),
        seconds: 9000,
        peak: f(43.1),
        peakAt: at(21.6),
        degreeHours: 4.1,
        cause: { is: 'unexplained' },
        class: 'not-explained',
        heat: { kelvin: 4.4, shows: 'heat-came-in' },
        cutBy: [],
      },
      {
        id: 'x4',
        channel: 'return-air',
        side: 'above',
        from: at(39.65),
        to: at(40.35),
        seconds: 2520,
        peak: f(44.1),
        peakAt: at(40),
        degreeHours: 1.5,
        cause: { is: 'defrost', how: 'logged' },
        class: 'normal-operation',
        cutBy: [],
      },
    ],
    excursionTotals: {
      count: 4,
      inRangeOutsideNormal: 0.94,
      classes: [
        {
          class: 'normal-operation',
          count: 3,
          seconds: 10_440,
          longestSeconds: 5400,
          highest: f(45.2),
          degreeHours: 6,
          firstAt: at(0),
          logged: 2,
          inferred: 1,
          causes: [
            { is: 'pull-down', count: 1 },
            { is: 'defrost', count: 2 },
          ],
        },
        {
          class: 'not-explained',
          count: 1,
          seconds: 9000,
          longestSeconds: 9000,
          highest: f(43.1),
          degreeHours: 4.1,
          firstAt: at(20.3),
          logged: 0,
          inferred: 0,
          causes: [{ is: 'unexplained', count: 1 }],
        },
      ],
    },
    usualReturnMinusSupply: { median: 1.9, spread: 0.4, rows: 210 },
    gaps: [{ from: at(30.16), to: at(32.66), seconds: 9000 }],
    logged: [
      { from: at(13.65), to: at(14.35), is: 'defrost', rows: 4 },
      { from: at(39.65), to: at(40.35), is: 'defrost', rows: 4 },
      { from: at(20.2), to: at(20.7), is: 'unit-off', rows: 3 },
    ],
    setPoints: [{ from: at(0), to: at(46.2), celsius: f(36) }],
  };
}

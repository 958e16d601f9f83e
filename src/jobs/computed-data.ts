// Computed results as CSV, attached to every dossier so that an expert can continue from them. Times are UTC,
// temperatures °C, degree-hours K·h; the originals stay untouched.

import { sourceLogOf } from '../core/assess/logs/join.js';
import type { Assessment, FindingQuantity, Shortfall } from '../core/model/results.js';
import { toInstant } from '../core/model/time.js';
import type { UnitLog } from '../core/model/unit-log.js';
import { type Cell, csvOf } from './csv.js';

/** One row per excursion of each log; of more than 5,000 the heaviest, as the result lists them. */
export function excursionsCsv({ temperatures }: Assessment): string {
  return csvOf(
    [
      'log',
      'excursion',
      'channel',
      'side',
      'from_utc',
      'to_utc',
      'seconds',
      'peak_celsius',
      'peak_utc',
      'kelvin_hours',
      'cause',
      'cause_basis',
      'cut_by',
      'compartment',
      'class',
      'return_minus_supply_kelvin',
      'return_minus_supply_shows',
    ],
    temperatures.flatMap(({ log, compartment, excursions }) =>
      excursions.map((e) => [
        log,
        e.id,
        e.channel,
        e.side,
        toInstant(e.from),
        toInstant(e.to),
        e.seconds,
        e.peak,
        toInstant(e.peakAt),
        e.degreeHours,
        e.cause.is,
        'how' in e.cause ? e.cause.how : '',
        e.cutBy.join(' '),
        compartment,
        e.class,
        e.heat?.kelvin,
        e.heat?.shows,
      ]),
    ),
  );
}

/** One row per channel of each log, over the custody of the carrier. */
export function channelsCsv({ temperatures }: Assessment): string {
  return csvOf(
    [
      'log',
      'channel',
      'mean_celsius',
      'min_celsius',
      'min_utc',
      'max_celsius',
      'max_utc',
      'known_seconds',
      'coverage',
      'in_band_seconds',
      'above_seconds',
      'below_seconds',
      'kelvin_hours_above',
      'kelvin_hours_below',
      'samples',
      'compartment',
    ],
    temperatures.flatMap(({ log, compartment, channels }) =>
      channels.map((c) => [
        log,
        c.channel,
        c.mean,
        c.min?.value,
        c.min === undefined ? undefined : toInstant(c.min.at),
        c.max?.value,
        c.max === undefined ? undefined : toInstant(c.max.at),
        c.knownSeconds,
        c.coverage,
        c.inBandSeconds,
        c.aboveSeconds,
        c.belowSeconds,
        c.degreeHoursAbove,
        c.degreeHoursBelow,
        c.samples,
        compartment,
      ]),
    ),
  );
}

/** One row per pulp reading. */
export function pulpsCsv({ pulps }: Assessment): string {
  return csvOf(
    [
      'line',
      'stop',
      'evidence',
      'at_utc',
      'celsius',
      'position',
      'from',
      'instrument',
      'verdict',
      'beyond_kelvin',
    ],
    pulps.flatMap(({ line, stop, readings }) =>
      readings.map((r) => [
        line,
        stop,
        r.evidence,
        r.at === undefined ? undefined : toInstant(r.at),
        r.celsius,
        r.position,
        r.from,
        r.instrument,
        r.verdict,
        r.beyond,
      ]),
    ),
  );
}

/** One row per word on the set point. */
export function setPointsCsv({ setPoints }: Assessment): string {
  return csvOf(
    ['source', 'evidence', 'at_utc', 'celsius', 'run', 'lines', 'compartment'],
    setPoints.words.map(({ source, evidence, at, celsius, run, lines = [], compartment }) => [
      source,
      evidence,
      at === undefined ? undefined : toInstant(at),
      celsius,
      run,
      lines.join(' '),
      compartment,
    ]),
  );
}

/** One row per requirement, met or not. */
export function gapsCsv({ gaps }: Assessment): string {
  return csvOf(
    ['rule', 'stage', 'weight', 'title', 'outcome', 'counted', 'against', 'lacking', 'closable', 'basis'],
    gaps.map((gap) => [
      gap.rule,
      gap.stage,
      gap.weight,
      gap.title,
      gap.outcome,
      gap.counted.join(' '),
      gap.against.join(' '),
      gap.lacking.map(shortfallCell).join('; '),
      gap.closable.is,
      gap.basis,
    ]),
  );
}

/** A shortfall as `name(fact=value, …)`; its words are in the dossier. */
function shortfallCell({ is, facts, ways, line, stop }: Shortfall): string {
  if (ways !== undefined)
    return `${is}(${ways.map((way) => way.map(shortfallCell).join(' + ')).join(' | ')})`;
  const shown = Object.entries({ ...facts, line, stop }).flatMap(([name, value]) =>
    value === undefined ? [] : [`${name}=${typeof value === 'object' ? quantity(value) : value}`],
  );
  return `${is}(${shown.join(', ')})`;
}

/** A quantity in the units of the other columns. */
function quantity({ is: _, ...rest }: FindingQuantity): string {
  return Object.values(rest).join(' ');
}

/** The rows of a log as computed with, by row of the file, or of the files it is joined from. */
export function logCsv(log: UnitLog): string {
  const channels = Object.entries(log.channels);
  const states = Object.entries(log.states);
  const joined = log.joinedFrom !== undefined;
  const rows = Array.from({ length: log.times.length }, (_, i): Cell[] => [
    ...(joined ? [sourceLogOf(log, i)] : []),
    log.rows.at(i),
    toInstant(log.times.at(i) ?? 0),
    ...channels.map(([, values]) => known(values.at(i))),
    ...states.map(([, texts]) => texts.at(i)),
  ]);
  return csvOf(
    [
      ...(joined ? ['file_of'] : []),
      'row',
      'time_utc',
      ...channels.map(([name]) => `${name}_celsius`),
      ...states.map(([name]) => name),
    ],
    rows,
  );
}

const known = (value: number | undefined): Cell =>
  value === undefined || Number.isNaN(value) ? undefined : value;

import { formatRows } from '../../core/assess/loading/format-rows.js';
import { loadPicture, type PulpPoint } from '../../core/charts/load-plan.js';
import type { Position } from '../../core/model/evidence.js';
import { omitUndefined } from '../../core/model/omit-undefined.js';
import type { LoadPlan, PulpGroup } from '../../core/model/results.js';
import { fromCelsius } from '../../core/model/temperature.js';
import { type Block, type Cell, type Fact, plain, wordsOf } from '../../core/words/blocks.js';
import { cell, exhibitLinks, type View } from './context.js';
import { column, tableOrNone } from './tables.js';

const ASSET = 'load-plan.svg';
/** Dimensions assumed for the drawing, which says so: a 53 ft trailer, 99 in wide inside. */
const DRAWN = { length: 16.0, width: 2.51 };
const LETTERS = 'ABCDEFGHIJKLMNOPQRSTUVWXYZ';

export interface LoadBlocks {
  loading: Block[];
  drawings: ReadonlyMap<string, string>;
}

/** The drawing of the floor, with the pulps at their places where any is known, and the table of the rows. */
export function loadBlocks(view: View): LoadBlocks {
  const plan = view.input.assessment.loading;
  if (plan === undefined) return { loading: [], drawings: new Map() };
  const points = pulpPoints(view, plan);
  const alt = wordsOf(view.words.line('alt-load-plan', altFacts(view, plan, points)));
  const drawn = view.labels(plan.insideWidth === undefined ? 'load.drawn-assumed' : 'load.drawn');
  const pulps = view.labels('load.pulps-drawn').replace('UNIT', view.format.unit);
  return {
    loading: [
      { is: 'picture', asset: ASSET, alt, caption: plain(points.length === 0 ? drawn : `${drawn} ${pulps}`) },
      ...numbers(view, plan),
    ],
    drawings: new Map([[ASSET, draw(view, plan, points)]]),
  };
}

/** Length used of each compartment, and the length it has. */
function compartmentFacts(view: View, { compartments = [] }: LoadPlan): Fact[] {
  const { format, labels } = view;
  return compartments.flatMap(({ compartment, from, to, used }): Fact[] =>
    used === undefined
      ? []
      : [
          {
            label: labels('compartment.used').replace('NAME', () => compartment),
            value: plain(
              to === undefined
                ? format.length(used - from)
                : labels('compartment.used-of')
                    .replace('USED', format.length(used - from))
                    .replace('LENGTH', format.length(to - from)),
            ),
          },
        ],
  );
}

function draw(view: View, plan: LoadPlan, points: readonly PulpPoint[]): string {
  const { labels, names } = view;
  const { lines, equipment } = view.input.state.delivery;
  const length = plan.insideLength ?? Math.max(DRAWN.length, plan.floorUsed ?? 0);
  return loadPicture({
    plan,
    length,
    width: plan.insideWidth ?? DRAWN.width,
    lines: lines
      .map(({ id }, i) => ({ id, letter: LETTERS[i % LETTERS.length] ?? '?', name: names.line(id) }))
      .filter(({ id }) => plan.rows.some((row) => row.line === id)),
    ...omitUndefined({ drains: equipment.trailer.drains }),
    airChute: equipment.trailer.airChute === true,
    compartments: (plan.compartments ?? []).map((floor, i, all) => ({
      name: view.compartment(floor.compartment),
      middle: (floor.from + (floor.to ?? length)) / 2,
      ...omitUndefined({ bulkhead: i === all.length - 1 ? undefined : floor.to }),
    })),
    braces: view.of('bracing').flatMap((item) => {
      const at = item.place?.position;
      return at === undefined ? [] : [{ y: rearOfThird(plan, at) }];
    }),
    points,
    words: {
      unit: labels('load.unit'),
      doors: labels('load.doors'),
      loading: labels('load.at-loading'),
      delivery: labels('load.at-delivery'),
      drain: labels('load.drain'),
      brace: labels('sub.bracing'),
      chute: labels('subject.air-chute'),
      pulp: labels('kind.pulp'),
    },
  });
}

/** A brace recorded for a third of the load is drawn behind the last row of that third. */
function rearOfThird(plan: LoadPlan, position: Position): number {
  const share = { nose: 1 / 3, middle: 2 / 3, tail: 1 }[position];
  const last = plan.rows[Math.max(0, Math.ceil(plan.rows.length * share) - 1)];
  return plan.pallets
    .filter((one) => one.row <= (last?.row ?? 0))
    .reduce((rear, one) => Math.max(rear, one.y + one.length), 0);
}

/**
 * One point per line and position, in the line's own rows: the first for the nose, the middle one, the last for the
 * tail. A position is a part of the load and not a pallet, as the caption says.
 */
function pulpPoints(view: View, plan: LoadPlan): PulpPoint[] {
  const { lines } = view.input.state.delivery;
  return lines.flatMap(({ id }) => {
    const rows = plan.rows.filter((row) => row.line === id);
    return (['nose', 'middle', 'tail'] as const).flatMap((position, i) => {
      const row = rows[Math.round(((rows.length - 1) * i) / 2)];
      const on = plan.pallets.find((one) => one.row === row?.row);
      const loading = valuesOf(view, id, 'load', position);
      const delivery = valuesOf(view, id, 'unload', position);
      if (on === undefined || (loading === undefined && delivery === undefined)) return [];
      return [
        {
          y: on.y + (on.length * (i + 1)) / 4,
          x: on.x + on.width / 2,
          ...omitUndefined({ loading, delivery }),
        },
      ];
    });
  });
}

function valuesOf(view: View, line: string, does: PulpGroup['does'], position: Position): string | undefined {
  const values = view.input.assessment.pulps
    .filter((group) => group.line === line && group.does === does)
    .flatMap((group) => group.readings)
    .filter((one) => one.position === position)
    .map((one) => fromCelsius(one.celsius, view.format.unit));
  if (values.length === 0) return undefined;
  const ends = [Math.min(...values), Math.max(...values)].map((value) => view.format.number(value, 1));
  return ends[0] === ends[1] ? ends[0] : ends.join('–');
}

function altFacts(view: View, plan: LoadPlan, points: readonly PulpPoint[]) {
  const rows = numbersByRun(view, plan).map((run) => `${run.rows} ${run.pattern} ${run.line}`.trim());
  return {
    rows: rows.join('; '),
    pallets: plan.pallets.length,
    used: plan.floorUsed === undefined ? undefined : { is: 'length' as const, metres: plan.floorUsed },
    ...(plan.rearGap === undefined
      ? { gap: undefined }
      : { gap: { is: 'length' as const, metres: plan.rearGap } }),
    pulps: points.map((one) => `${one.loading ?? '–'} / ${one.delivery ?? '–'}`).join(', '),
  };
}

interface Run {
  rows: string;
  pattern: string;
  line: string;
  first: LoadPlan['rows'][number];
}

/** Neighbouring equal rows as one. */
function numbersByRun(view: View, plan: LoadPlan): Run[] {
  const runs: { from: number; to: number; first: LoadPlan['rows'][number] }[] = [];
  for (const row of plan.rows) {
    const last = runs.at(-1);
    const alike =
      last !== undefined &&
      last.to === row.row - 1 &&
      last.first.pattern === row.pattern &&
      last.first.line === row.line &&
      last.first.blocks.join() === row.blocks.join();
    if (alike) last.to = row.row;
    else runs.push({ from: row.row, to: row.row, first: row });
  }
  return runs.map(({ from, to, first }) => ({
    rows: from === to ? String(from) : `${from}–${to}`,
    pattern: view.labels(`pattern.${first.pattern}`),
    line: first.line === undefined ? '' : view.names.line(first.line),
    first,
  }));
}

function numbers(view: View, plan: LoadPlan): Block[] {
  const { labels, format } = view;
  const facts = [
    ...(plan.floorUsed === undefined
      ? []
      : [{ label: labels('load.used'), value: plain(format.length(plan.floorUsed)) }]),
    ...(plan.rearGap === undefined
      ? []
      : [
          {
            label: labels('load.gap'),
            value: plain(
              `${format.length(plan.rearGap)}${plan.lengthFrom === 'outside' ? ` (${labels('load.by-outside')})` : ''}`,
            ),
          },
        ]),
    {
      label: labels('load.pallets'),
      value: plain(
        `${plan.pallets.length}${plan.palletsOnBill === undefined ? '' : ` (${labels('load.on-bill')} ${plan.palletsOnBill})`}`,
      ),
    },
    ...(plan.fits.length === 0
      ? []
      : [
          {
            label: labels('load.fits'),
            value: plain(
              plan.fits.map((fit) => `${labels(`pattern-short.${fit.pattern}`)} ${fit.pallets}`).join(', '),
            ),
          },
        ]),
    ...plan.ceilings.flatMap(({ line, clearance }) =>
      clearance === undefined
        ? []
        : [
            {
              label: labels('load.ceiling'),
              value: plain(`${view.names.line(line)}: ${format.length(clearance)}`),
            },
          ],
    ),
    ...compartmentFacts(view, plan),
    ...(plan.assumedFootprint.length === 0
      ? []
      : [
          {
            label: labels('load.assumed'),
            value: plain(plan.assumedFootprint.map(view.names.line).join(', ')),
          },
        ]),
    ...(plan.unknownRows.length === 0
      ? []
      : [{ label: labels('load.unknown'), value: plain(formatRows(plan.unknownRows)) }]),
  ];
  return [
    ...tableOrNone(
      view,
      'loading',
      [
        column(view, 'rows', 1),
        column(view, 'pattern', 3.4),
        column(view, 'line', 2.4),
        column(view, 'across', 2, 'right'),
        column(view, 'side-room', 2, 'right'),
        column(view, 'remark', 2),
        column(view, 'exhibit', 1),
      ],
      numbersByRun(view, plan).map(({ rows, pattern, line, first }): Cell[] => [
        cell(rows),
        cell(pattern),
        cell(line),
        cell(format.length(first.across)),
        cell(first.sideRoom === undefined ? '–' : format.length(first.sideRoom)),
        first.blocks.length === 0
          ? cell('')
          : { is: 'alert', of: plain(first.blocks.map((one) => labels(`air-block.${one}`)).join(', ')) },
        exhibitLinks(view, [first.evidence]),
      ]),
    ),
    { is: 'facts', facts },
  ];
}

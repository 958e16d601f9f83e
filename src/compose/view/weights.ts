import { formatRows } from '../../core/assess/loading/format-rows.js';
import type { LegWeights, LoadWeights, RowWeight } from '../../core/model/results.js';
import { type Block, type Cell, type Fact, plain } from '../../core/words/blocks.js';
import { cell, exhibitLinks, type View } from './context.js';
import { listOrNone, tableOf } from './tables.js';

/** Weight of the load by row, and axle weights by leg; nothing where no weight is known. */
export function weightBlocks(view: View): Block[] {
  const { weights } = view.input.assessment;
  if (weights === undefined) return [];
  return [
    ...rowTable(view, weights),
    ...weights.legs.flatMap((leg) => legBlocks(view, leg)),
    ...(weights.legs.some(isEstimated)
      ? [{ is: 'paragraph', of: plain(view.labels('axle.caution')) } as const]
      : []),
  ];
}

const isEstimated = ({ groups }: LegWeights) => groups.some(({ estimate }) => estimate !== undefined);

function rowTable(view: View, { rows, heaviest, unknown }: LoadWeights): Block[] {
  const { format, labels, names } = view;
  if (rows.length === 0) return [];
  const facts: Fact[] = [
    ...(heaviest === undefined
      ? []
      : [
          {
            label: labels('load.heaviest'),
            value: plain(
              labels('load.heaviest-row')
                .replace('ROW', String(heaviest.row))
                .replace('WEIGHT', format.weight(heaviest.kilograms / heaviest.pallets)),
            ),
          },
        ]),
    ...(unknown.length === 0
      ? []
      : [{ label: labels('load.no-weight'), value: plain(unknown.map(names.line).join(', ')) }]),
  ];
  return [
    ...listOrNone(
      view,
      'weights',
      alike(rows),
      [
        ['rows', 1, (run) => formatRows(run.map(({ row }) => row))],
        ['line', 2.6, ([first]) => (first?.line === undefined ? '' : names.line(first.line))],
        [
          'each',
          2.2,
          ([first]) => (first === undefined ? '' : format.weight(first.kilograms / first.pallets)),
          'right',
        ],
        [
          'row-weight',
          2.2,
          (run) => format.weight(run.reduce((sum, one) => sum + one.kilograms, 0)),
          'right',
        ],
        ['basis', 2.4, ([first]) => labels(first?.from === 'noted' ? 'axle.noted' : 'axle.from-bill')],
      ],
      labels('sub.weights'),
    ),
    ...(facts.length === 0 ? [] : [{ is: 'facts', facts } as const]),
  ];
}

/** Rows one behind the other with pallets of one line and weight. */
function alike(rows: readonly RowWeight[]): RowWeight[][] {
  const runs: RowWeight[][] = [];
  for (const row of rows) {
    const run = runs.at(-1);
    const last = run?.at(-1);
    const same =
      last !== undefined &&
      last.row + 1 === row.row &&
      last.line === row.line &&
      last.from === row.from &&
      Math.abs(last.kilograms / last.pallets - row.kilograms / row.pallets) < 1e-6;
    if (run !== undefined && same) run.push(row);
    else runs.push([row]);
  }
  return runs;
}

function legBlocks(view: View, leg: LegWeights): Block[] {
  const { format, labels, names } = view;
  const weight = (kilograms: number | undefined): Cell =>
    cell(kilograms === undefined ? '–' : format.weight(kilograms));
  const { limits } = view.input.state.delivery.equipment;
  const facts: Fact[] = [
    ...(leg.load === 0
      ? []
      : [
          { label: labels('load.load-weight'), value: plain(format.weight(leg.load)) },
          { label: labels('load.centre'), value: plain(format.length(leg.centre)) },
        ]),
    ...(limits?.from === undefined ? [] : [{ label: labels('axle.limits-from'), value: plain(limits.from) }]),
  ];
  const title = labels('axle.leg')
    .replace('FROM', names.stop(leg.from))
    .replace('TO', () => names.stop(leg.to));
  const table = tableOf(view, leg.groups, [
    ['axles', 1.6, ({ group }) => labels(`axle.${group}`)],
    ['of-load', 2, ({ load }) => weight(load), 'right'],
    ['unladen', 2, ({ empty }) => weight(empty), 'right'],
    ['estimate', 2, ({ estimate }) => weight(estimate), 'right'],
    ['scale', 2, ({ scale }) => weight(scale), 'right'],
    [
      'limit',
      2,
      ({ limit, scale, estimate }) =>
        limit !== undefined && (scale ?? estimate ?? 0) > limit
          ? { is: 'alert', of: plain(format.weight(limit)) }
          : weight(limit),
      'right',
    ],
  ]);
  const blocks: Block[] = [
    { is: 'heading', level: 2, text: `${labels('sub.axles')}: ${title}` },
    leg.groups.length === 0 ? { is: 'none', of: plain(labels('axle.no-geometry')) } : table,
  ];
  if (leg.weighed !== undefined)
    blocks.push({
      is: 'paragraph',
      of: [...plain(`${labels('kind.scale')}: `), ...exhibitLinks(view, [leg.weighed])],
    });
  if (facts.length > 0) blocks.push({ is: 'facts', facts });
  return blocks;
}

import { formatRows } from '../../core/assess/loading/format-rows.js';
import type {
  Assessment,
  AxleWeight,
  LegWeights,
  LoadPlan,
  LoadWeights,
  ShockResult,
  StopDoors,
} from '../../core/model/results.js';
import type { ItemOf, RecordState } from '../../core/model/state.js';
import type { Zone } from '../../core/model/time.js';
import type { Format } from '../../core/words/format.js';
import type { Output } from '../output.js';
import { idInWords, printWrapped } from '../print.js';
import { terminalFormat } from '../quantities.js';
import { tableLines } from '../table.js';

interface LoadView {
  output: Output;
  state: RecordState;
  format: Format;
  zoneOf: (stop: string | undefined) => Zone;
}

/** How the load stood and was handled; only what the record holds. */
export function printLoad(output: Output, state: RecordState, assessment: Assessment): void {
  const { stops, show } = state.delivery;
  const first = stops[0]?.zone ?? ('UTC' as Zone);
  const view: LoadView = {
    output,
    state,
    format: terminalFormat(show.temperature),
    zoneOf: (stop) => stops.find(({ id }) => id === stop)?.zone ?? first,
  };
  const { loading, weights, doors = [], shocks = [] } = assessment;
  const pallets = state.evidence.filter((item): item is ItemOf<'pallets'> => item.kind === 'pallets');
  const parts: [title: string, print: () => void, has: boolean][] = [
    ['Rows, from the nose', () => loading && printRows(view, loading), loading !== undefined],
    ['Weights', () => weights && printWeights(view, weights), weights !== undefined],
    ['Doors by stop', () => printDoors(view, doors), doors.length > 0],
    ['Shocks and hard braking', () => printShocks(view, shocks), shocks.length > 0],
    ['Pallets as found', () => printPallets(view, pallets), pallets.length > 0],
  ];
  const there = parts.filter(([, , has]) => has);
  if (there.length === 0)
    output.line('Nothing is recorded of rows, weights, doors, shocks or pallets: dossier record --help');
  there.forEach(([title, print], i) => {
    if (i > 0) output.line();
    output.line(output.style('bold', title));
    print();
  });
}

function printRows({ output, format }: LoadView, plan: LoadPlan): void {
  const rows = plan.rows.map((row) => [
    String(row.row),
    row.pattern,
    row.line ?? '',
    row.compartment ?? '',
    row.sideRoom === undefined ? '' : `side room ${format.length(row.sideRoom)}`,
    row.blocks.map(idInWords).join(', '),
  ]);
  for (const line of tableLines(rows, output.width)) output.line(line);
  for (const { compartment, from, to, used } of plan.compartments ?? [])
    if (used !== undefined)
      output.line(
        `${compartment}: ${format.length(used - from)} used${to === undefined ? '' : ` of ${format.length(to - from)}`}`,
      );
  if (plan.unknownRows.length > 0) output.line(`Rows not noted: ${formatRows(plan.unknownRows)}`);
}

function printWeights(view: LoadView, { rows, unknown, legs }: LoadWeights): void {
  const { output, format } = view;
  const table = rows.map((one) => [
    `row ${one.row}`,
    one.line ?? '',
    format.weight(one.kilograms),
    one.from === 'noted' ? 'as noted' : 'by the bill, spread evenly',
  ]);
  for (const line of tableLines(table, output.width)) output.line(line);
  if (unknown.length > 0) output.line(`No weight known: ${unknown.join(', ')}`);
  for (const leg of legs) printLeg(view, leg);
}

function printLeg({ output, format }: LoadView, leg: LegWeights): void {
  output.line();
  const load =
    leg.load === 0
      ? ''
      : `: ${format.weight(leg.load)} aboard, ${format.length(leg.centre)} behind the front wall`;
  printWrapped(output, `${leg.from} to ${leg.to}${load}`);
  const weight = (kilograms: number | undefined) =>
    kilograms === undefined ? '-' : format.weight(kilograms);
  const rows = leg.groups.map((one) => [
    one.group,
    weight(one.estimate),
    weight(one.scale),
    weight(one.limit),
    verdict(one),
  ]);
  const head = [
    'axles',
    'estimate',
    leg.weighed === undefined ? 'scale' : `scale (${leg.weighed})`,
    'limit',
    '',
  ];
  if (rows.length > 0) for (const line of tableLines([head, ...rows], output.width)) output.line(line);
  else output.line('No axle weight: the places of kingpin and axles, or the empty weights, are not stated.');
}

function verdict({ estimate, scale, limit }: AxleWeight): string {
  const weight = scale ?? estimate;
  if (weight === undefined || limit === undefined) return '';
  return weight > limit ? 'ABOVE THE LIMIT' : 'within';
}

function printDoors({ output, format, zoneOf }: LoadView, doors: readonly StopDoors[]): void {
  for (const { stop, noted, logged, loggedSeconds } of doors) {
    const at = (ms: number | undefined) => (ms === undefined ? '?' : format.time(ms, zoneOf(stop)));
    const said = [
      ...noted.map(({ from, to }) => `${at(from)} to ${at(to)} as noted`),
      ...(logged.length === 0
        ? []
        : [`${logged.length} × by the log, ${format.duration(loggedSeconds)}, first ${at(logged[0]?.from)}`]),
    ];
    printWrapped(output, said.join('; '), { mark: `${stop ?? 'between stops'}: ` });
  }
}

function printShocks({ output, state, format, zoneOf }: LoadView, shocks: readonly ShockResult[]): void {
  const rows = shocks.flatMap((result) => {
    const item = state.evidence.find(({ evidence }) => evidence === result.evidence);
    if (item?.kind !== 'shock') return [];
    return [
      [
        item.evidence,
        result.at === undefined
          ? 'no time'
          : format.time(result.at, item.time.is === 'known' ? item.time.zone : zoneOf(undefined)),
        idInWords(item.what),
        item.peak === undefined ? '-' : format.acceleration(item.peak),
        item.milliseconds === undefined ? '' : `${item.milliseconds} ms`,
        item.threshold === undefined
          ? 'no threshold'
          : `${result.over === true ? 'REACHES' : 'below'} ${format.acceleration(item.threshold)}`,
        result.when === 'aboard' ? '' : WHEN[result.when],
      ],
    ];
  });
  for (const line of tableLines(rows, output.width)) output.line(line);
}

const WHEN = {
  before: 'before the doors were closed',
  after: 'after they were opened',
  unknown: 'not known when',
};

function printPallets({ output, state, format }: LoadView, pallets: readonly ItemOf<'pallets'>[]): void {
  const stops = new Map(state.delivery.stops.map(({ id, place }) => [id, place]));
  for (const item of pallets)
    printWrapped(
      output,
      [
        [item.count, item.state].filter((part) => part !== undefined).join(' '),
        item.rows === undefined ? '' : `rows ${item.rows.from}-${item.rows.to}`,
        item.place?.compartment ?? '',
        item.place?.position ?? '',
        stops.get(item.place?.stop ?? '') ?? '',
        format.eventTime(item.time),
        item.documents.length === 0 ? 'no photograph named' : `photographs ${item.documents.join(', ')}`,
        item.note ?? '',
      ]
        .filter((part) => part !== '')
        .join(', '),
      { mark: `${item.evidence}  ` },
    );
}

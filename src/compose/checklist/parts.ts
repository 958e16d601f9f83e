import type { Delivery, Line, Stop } from '../../core/model/delivery.js';
import { type EventName, type Position, position as positions } from '../../core/model/evidence.js';
import { metres } from '../../core/model/length.js';
import type { RuleSet } from '../../core/model/rule-set.js';
import type { ChecklistBox, ChecklistPart, ChecklistRow, UnitCheckPart } from './box.js';
import { type DockRequirements, dockRequirements } from './dock-requirements.js';
import { boxes, type Numbered } from './rows.js';
import { exceptions, inspection, lineLetter, outcomes, withSayers } from './stop-parts.js';

const AT_LOADING: readonly EventName[] = [
  'arrived',
  'doors-opened',
  'loading-began',
  'loading-ended',
  'doors-closed',
  'departed',
];
const AT_UNLOADING: readonly EventName[] = [
  'arrived',
  'notice-of-arrival',
  'doors-opened',
  'unloading-began',
  'unloaded',
  'refused',
];
const UNIT_CHECK: readonly UnitCheckPart[] = ['at', 'box-air', 'set-point', 'fuel', 'alarm'];
const UNIT_CHECKS = 5;
/** Rows of turned 40 × 48 in pallets that fill a 53 ft floor. Common practice, no source. */
const ROWS = 15;
const FEWEST_ROWS = 6;
const TURNED_ROW_METRES = 40 * 0.0254;

/**
 * The form for one delivery: what its rule set asks for, by its stops and lines. The same delivery and rules give
 * the same numbers, so that what was written on paper can be typed in by number.
 */
export function checklistParts(delivery: Delivery, ruleSet: RuleSet): ChecklistPart[] {
  const requirements = dockRequirements(ruleSet, delivery);
  let last = 0;
  const box: Numbered = (question) => {
    last += 1;
    return { number: last, question };
  };
  const { stops, lines } = delivery;
  return [
    { is: 'person', rows: [boxes([box({ is: 'name' }), 1])] },
    ...stops
      .filter((stop) => stop.does === 'load')
      .flatMap((stop) => loading(stop, lines, requirements, box, delivery)),
    ...transit(requirements, box),
    ...stops
      .filter((stop) => stop.does === 'unload')
      .flatMap((stop) => unloading(stop, lines, requirements, box)),
    { is: 'statement', rows: [{ is: 'lines', box: box({ is: 'statement' }), lines: 2 }] },
    // Last, so that the other boxes keep their numbers.
    ...withSayers(
      stops.filter((stop) => stop.does === 'unload').flatMap((stop) => outcomes(stop, lines, box)),
      box,
    ),
    ...stops.filter((stop) => stop.does === 'unload').map((stop) => inspection(stop, box)),
  ];
}

function times(stop: Stop, events: readonly EventName[], box: Numbered): ChecklistRow {
  return boxes(
    [box({ is: 'day', stop: stop.id }), 1.3],
    ...events.map((event): [ChecklistBox, number] => [box({ is: 'event', event, stop: stop.id }), 1]),
  );
}

function loading(
  { id: stop, ...rest }: Stop,
  lines: readonly Line[],
  requirements: DockRequirements,
  box: Numbered,
  delivery: Delivery,
): ChecklistPart[] {
  const here = lines.filter((line) => line.from === stop);
  const parts: ChecklistPart[] = [
    {
      is: 'before',
      stop,
      rows: [times({ id: stop, ...rest }, AT_LOADING, box), ...ticks(requirements, 'load')],
    },
  ];
  if (requirements.reads('pulp', 'load'))
    parts.push({
      is: 'pulps',
      stop,
      rows: [
        pulps(stop, here, lines, requirements.positions, box, ['driver']),
        boxes(
          [box({ is: 'pulp-at', stop }), 1],
          [box({ is: 'thermometer', stop }), 1.6],
          [box({ is: 'ice', stop }), 0.8],
        ),
      ],
    });
  parts.push({
    is: 'leaving',
    stop,
    rows: [
      boxes(
        [box({ is: 'set-point', shownBy: 'bill', stop }), 1],
        [box({ is: 'set-point', shownBy: 'display', stop }), 1],
        [box({ is: 'run', stop }), 1.1],
        [box({ is: 'departure-reading', at: 'box-air', stop }), 1],
        [box({ is: 'departure-reading', at: 'fuel', stop }), 1],
        [box({ is: 'seal', stop, state: 'applied' }), 1.5],
      ),
    ],
  });
  const pattern: ChecklistRow[] = [
    {
      is: 'strip',
      boxes: Array.from({ length: rowsOf(delivery) }, (_, i) => box({ is: 'row', row: i + 1, stop })),
    },
  ];
  if (requirements.reads('bracing', 'load'))
    pattern.push(
      boxes(
        [box({ is: 'bracing', part: 'device', stop }), 1.3],
        [box({ is: 'bracing', part: 'note', stop }), 2.6],
      ),
    );
  parts.push({ is: 'pattern', stop, rows: pattern });
  parts.push(
    { is: 'particulars', stop, rows: [particulars(stop, box)] },
    { is: 'notice', stop, rows: [notices(stop, box)] },
    exceptions(stop, box),
  );
  return parts;
}

/** As many rows as the trailer holds of the shortest kind. */
function rowsOf({ equipment: { trailer } }: Delivery): number {
  const length = trailer.insideLength ?? trailer.length;
  if (length === undefined) return ROWS;
  return Math.min(ROWS, Math.max(FEWEST_ROWS, Math.floor(metres(length) / TURNED_ROW_METRES)));
}

const particulars = (stop: string, box: Numbered): ChecklistRow =>
  boxes(
    [box({ is: 'particular', of: 'loaded-by', stop }), 1.2],
    [box({ is: 'particular', of: 'counted-by', stop }), 1.2],
    [box({ is: 'particular', of: 'count', stop }), 1],
    [box({ is: 'recorder', part: 'number', stop }), 1.1],
    [box({ is: 'recorder', part: 'where', stop }), 1.3],
    [box({ is: 'particular', of: 'defrost', stop }), 0.8],
    [box({ is: 'particular', of: 'fresh-air-vent', stop }), 0.8],
  );

const notices = (stop: string, box: Numbered): ChecklistRow =>
  boxes(
    [box({ is: 'notice', part: 'with', stop }), 1],
    [box({ is: 'notice', part: 'at', stop }), 0.8],
    [box({ is: 'notice', part: 'about', stop }), 3],
  );

function ticks(requirements: DockRequirements, side: 'load' | 'unload'): ChecklistRow[] {
  const photos = requirements.photos(side);
  return photos.length === 0 ? [] : [{ is: 'ticks', photos }];
}

type PulpReader = 'driver' | 'receiver';

/** A row for each line; the receiver's own readings are to the right of the driver's. */
function pulps(
  stop: string,
  here: readonly Line[],
  all: readonly Line[],
  spread: readonly Position[],
  box: Numbered,
  readers: readonly PulpReader[],
): ChecklistRow {
  const parts =
    spread.length === 0 ? positions.options : positions.options.filter((one) => spread.includes(one));
  const columns = readers.flatMap((from) => parts.map((position) => ({ from, position })));
  return {
    is: 'grid',
    columns: columns.map(({ from, position }) =>
      from === 'receiver' ? (`receiver-${position}` as const) : position,
    ),
    rows: here.map(({ id: line }) => ({
      line,
      letter: lineLetter(line, all),
      boxes: columns.map(({ from, position }) => box({ is: 'pulp', line, position, stop, from })),
    })),
  };
}

function transit(requirements: DockRequirements, box: Numbered): ChecklistPart[] {
  if (!requirements.reads('round', 'transit')) return [];
  return [
    {
      is: 'transit',
      rows: [
        boxes([box({ is: 'day', stop: 'transit' }), 1]),
        {
          is: 'grid',
          columns: UNIT_CHECK,
          rows: Array.from({ length: UNIT_CHECKS }, (_, i) => ({
            count: i + 1,
            boxes: UNIT_CHECK.map((part) => box({ is: 'unit-check', count: i + 1, part })),
          })),
        },
      ],
    },
  ];
}

function unloading(
  stop: Stop,
  lines: readonly Line[],
  requirements: DockRequirements,
  box: Numbered,
): ChecklistPart[] {
  const here = lines.filter((line) => line.to === stop.id);
  const parts: ChecklistPart[] = [
    {
      is: 'arrival',
      stop: stop.id,
      rows: [
        times(stop, AT_UNLOADING, box),
        boxes(
          [box({ is: 'seal', stop: stop.id, state: 'found' }), 1.4],
          [box({ is: 'seal-state', stop: stop.id }), 1],
          [box({ is: 'pulp-at', stop: stop.id }), 0.9],
          [box({ is: 'thermometer', stop: stop.id }), 1.4],
          [box({ is: 'ice', stop: stop.id }), 0.8],
          [box({ is: 'particular', of: 'count', stop: stop.id }), 0.9],
        ),
        ...ticks(requirements, 'unload'),
      ],
    },
  ];
  const from: PulpReader[] = [
    ...(requirements.reads('pulp', 'unload') ? (['driver'] as const) : []),
    ...(requirements.receiverPulps ? (['receiver'] as const) : []),
  ];
  if (from.length > 0)
    parts.push({
      is: 'pulps',
      stop: stop.id,
      rows: [pulps(stop.id, here, lines, requirements.positions, box, from)],
    });
  parts.push({ is: 'notice', stop: stop.id, rows: [notices(stop.id, box)] });
  return parts;
}

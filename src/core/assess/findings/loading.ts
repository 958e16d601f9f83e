import type { Line } from '../../model/delivery.js';
import type { EvidenceId } from '../../model/evidence.js';
import { metres } from '../../model/length.js';
import type { Finding, LoadPlan, LoadRow } from '../../model/results.js';
import type { ItemOf, RecordState } from '../../model/state.js';
import { formatRows } from '../loading/format-rows.js';
import { USUAL_FOOTPRINT } from '../loading/plan.js';
import { firstLoading, latestTimeOf } from '../milestones.js';
import { type FindingContext, finding, inCompartment, length, lineRef } from './make.js';

const BY = 'rows as noted and the dimensions in the delivery file';
const INCH = 0.0254;
/**
 * Total side clearance from which a row can shift; below it the row is against the walls. Common practice, no
 * source.
 */
const SIDE_ROOM = 4 * INCH;
/** At least 4 in clear at the rear doors: vehicle checklist practice. */
const REAR_GAP = 4 * INCH;
/** Clearance that air needs above the load. Common practice, no source. */
const CEILING = 9 * INCH;
/** A stack this many times as high as its pallet's short side is tall. Common practice, no source. */
const TALL = 2;
/** Lengths are recorded to the half inch at best. */
const ROUNDED = INCH / 100;

/** Devices that hold pallets against tipping, not only against sliding. */
const CROSSWISE: readonly ItemOf<'bracing'>['device'][] = ['load-bars', 'straps', 'boards'];

/**
 * Findings on side clearance, bracing, ice, airflow and count of the recorded rows. None before the doors were
 * closed.
 */
export function loadingFindings(context: FindingContext): Finding[] {
  const { loading: plan, state, milestones } = context;
  const stop = firstLoading(milestones.stops);
  if (plan === undefined || stop === undefined) return [];
  if (latestTimeOf(milestones, stop.id, 'doors-closed') === undefined) return [];
  const bracing = bracingOf(state);
  return [
    ...sideRoom(plan, bracing),
    ...tallPallets(plan, state.delivery.lines, bracing),
    ...icedGoods(plan, context),
    ...airPath(plan),
    ...room(plan),
  ];
}

interface Bracing {
  devices: ItemOf<'bracing'>[];
  evidence: EvidenceId[];
}

/** Bracing readings, and confirmed photos of bracing, which show a device but not which. */
function bracingOf(state: RecordState): Bracing {
  const devices = state.evidence.filter((item): item is ItemOf<'bracing'> => item.kind === 'bracing');
  const photos = state.evidence.filter(
    (item) => item.kind === 'photo' && item.subject?.is === 'bracing' && item.subject.sure === 'confirmed',
  );
  return { devices, evidence: [...devices, ...photos].map((item) => item.evidence) };
}

const evidenceOf = (rows: readonly LoadRow[]) => rows.map((row) => row.evidence);

const said = (rows: readonly LoadRow[]) => formatRows(rows.map(({ row }) => row));

function sideRoom(plan: LoadPlan, bracing: Bracing): Finding[] {
  const known = plan.rows.flatMap((row) => (row.sideRoom === undefined ? [] : [{ row, room: row.sideRoom }]));
  const loose = known.filter(({ room }) => room >= SIDE_ROOM - ROUNDED);
  const tight = known.filter(({ room }) => room >= 0 && room < SIDE_ROOM - ROUNDED);
  const rows = (some: typeof known) => some.map(({ row }) => row);
  const findings: Finding[] = [];
  if (loose.length > 0) {
    const widest = length(Math.max(...loose.map(({ room }) => room)));
    const facts = { rows: said(rows(loose)), widest };
    findings.push(
      bracing.evidence.length > 0
        ? finding('side-room-braced', BY, [...bracing.evidence, ...evidenceOf(rows(loose))], {
            ...facts,
            devices: [...new Set(bracing.devices.map((item) => item.device))].join(', ') || 'photo',
          })
        : finding('side-room-not-braced', BY, evidenceOf(rows(loose)), {
            ...facts,
            limit: length(SIDE_ROOM),
          }),
    );
  }
  if (tight.length > 0)
    findings.push(
      finding('rows-hard-to-walls', BY, evidenceOf(rows(tight)), {
        rows: said(rows(tight)),
        least: length(Math.min(...tight.map(({ room }) => room))),
        limit: length(SIDE_ROOM),
      }),
    );
  return findings;
}

function tallPallets(plan: LoadPlan, lines: readonly Line[], bracing: Bracing): Finding[] {
  if (bracing.devices.some((item) => CROSSWISE.includes(item.device))) return [];
  return plan.ceilings.flatMap(({ line: id, stack }) => {
    const line = lines.find((one) => one.id === id);
    const base = metres((line?.pallet ?? USUAL_FOOTPRINT).short);
    if (line?.light === false || stack < TALL * base - ROUNDED) return [];
    const rows = plan.rows.filter((row) => row.line === id);
    return [
      finding(
        line?.light === true ? 'tall-light-pallets-not-braced' : 'tall-pallets-not-braced',
        BY,
        evidenceOf(rows),
        { line: lineRef(id), stack: length(stack), base: length(base) },
      ),
    ];
  });
}

/** Ice water runs to the drains: iced rows belong beside them, with no dry row in the drainage path. */
function icedGoods(plan: LoadPlan, { state }: FindingContext): Finding[] {
  const { lines, equipment } = state.delivery;
  const { drains } = equipment.trailer;
  const iced = new Set(lines.filter((line) => line.iced).map(({ id }) => id));
  const dry = plan.rows.filter((row) => row.line !== undefined && !iced.has(row.line));
  return [...iced].flatMap((id) => {
    const rows = plan.rows.filter((row) => row.line === id);
    const [first, last] = [rows[0], rows.at(-1)];
    if (first === undefined || last === undefined) return [];
    const facts = { line: lineRef(id), rows: said(rows) };
    const behind = dry.filter(({ row }) => row > first.row);
    const before = dry.filter(({ row }) => row < last.row);
    if (drains === 'none')
      return [finding('iced-away-from-drains', BY, evidenceOf(rows), { ...facts, noDrains: true })];
    if (drains === 'front' || (drains === 'both' && before.length === 0))
      return before.length === 0
        ? [finding('iced-by-drains', BY, evidenceOf(rows), facts)]
        : [finding('iced-away-from-drains', BY, evidenceOf(rows), { ...facts, noDrains: false })];
    if (behind.length === 0)
      return drains === undefined ? [] : [finding('iced-by-drains', BY, evidenceOf(rows), facts)];
    return [
      finding('iced-ahead-of-dry', BY, evidenceOf([...rows, ...behind]), { ...facts, dry: said(behind) }),
    ];
  });
}

function airPath(plan: LoadPlan): Finding[] {
  const blocked = plan.rows.filter((row) => row.blocks.length > 0);
  const near = plan.ceilings.filter(
    ({ clearance }) => clearance !== undefined && clearance < CEILING - ROUNDED,
  );
  return [
    ...(blocked.length === 0
      ? []
      : [
          finding('air-path-blocked', BY, evidenceOf(blocked), {
            rows: said(blocked),
            what: [...new Set(blocked.flatMap((row) => row.blocks))].join(', '),
          }),
        ]),
    ...near.map(({ line, clearance = 0 }) =>
      finding('load-near-ceiling', BY, evidenceOf(plan.rows.filter((row) => row.line === line)), {
        line: lineRef(line),
        clearance: length(clearance),
        limit: length(CEILING),
      }),
    ),
  ];
}

function room(plan: LoadPlan): Finding[] {
  const findings: Finding[] = [];
  const all = evidenceOf(plan.rows);
  const { rearGap, floorUsed, insideLength, insideWidth } = plan;
  if (rearGap !== undefined && floorUsed !== undefined && insideLength !== undefined) {
    if (rearGap < -ROUNDED)
      findings.push(
        finding('load-does-not-fit', BY, all, {
          needed: length(floorUsed),
          there: length(insideLength),
          across: false,
        }),
      );
    else if (rearGap < REAR_GAP - ROUNDED)
      findings.push(
        finding('load-near-doors', BY, all, {
          gap: length(rearGap),
          limit: length(REAR_GAP),
          outside: plan.lengthFrom === 'outside',
        }),
      );
  }
  for (const { compartment, from, to, used } of plan.compartments ?? []) {
    // The doors are asked about above, as the end of the whole floor.
    if (to === undefined || used === undefined || used <= to + ROUNDED || to === insideLength) continue;
    const here = plan.rows.filter((row) => row.compartment === compartment);
    findings.push(
      inCompartment(
        compartment,
        finding('load-does-not-fit', BY, evidenceOf(here), {
          needed: length(used - from),
          there: length(to - from),
          across: false,
        }),
      ),
    );
  }
  const widest = Math.max(...plan.rows.map((row) => row.across));
  if (insideWidth !== undefined && widest > insideWidth + ROUNDED)
    findings.push(
      finding('load-does-not-fit', BY, all, {
        needed: length(widest),
        there: length(insideWidth),
        across: true,
      }),
    );
  const { palletsOnBill } = plan;
  if (palletsOnBill !== undefined && plan.unknownRows.length === 0 && palletsOnBill !== plan.pallets.length)
    findings.push(
      finding('pallets-noted-differ', BY, all, { noted: plan.pallets.length, bill: palletsOnBill }),
    );
  return findings;
}

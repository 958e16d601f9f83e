import { assertNever } from '../../core/model/error.js';
import type { Exhibit } from '../../core/model/manifest.js';
import type { EvidenceItem, RecordState } from '../../core/model/state.js';
import { type Cell, csvOf } from '../csv.js';

/**
 * One row per exhibit: what it is, when and where, and which row of which file it was read from. What is withheld has no
 * value, and no exhibit has coordinates.
 */
export function exhibitsCsv(state: RecordState, exhibits: readonly Exhibit[]): string {
  const items = new Map(state.evidence.map((item) => [item.evidence, item]));
  return csvOf(
    [
      'exhibit',
      'evidence',
      'entry',
      'kind',
      'at_utc',
      'zone',
      'stop',
      'position',
      'line',
      'value',
      'unit',
      'by',
      'file_of',
      'row',
      'sha256',
      'compartment',
    ],
    exhibits.flatMap(({ exhibit, evidence, seq, kind, file }): Cell[][] => {
      const item = items.get(evidence);
      if (item === undefined) return [];
      const { time, place, line, by } = item;
      const from = 'source' in item && item.source.is === 'row' ? item.source : undefined;
      const known = time.is === 'known' ? time : undefined;
      return [
        [
          exhibit,
          evidence,
          seq,
          kind,
          known?.instant,
          known?.zone,
          place?.stop,
          place?.position,
          line,
          ...(item.withheld === undefined ? readingOf(item) : [undefined, undefined]),
          by,
          from?.evidence,
          from?.row,
          file?.sha256,
          place?.compartment,
        ],
      ];
    }),
  );
}

/** What was read, and its unit as it was read. */
function readingOf(item: EvidenceItem): [Cell, Cell] {
  switch (item.kind) {
    case 'pulp':
    case 'set-point':
      return [item.temperature.value, item.temperature.unit];
    case 'round':
      return [item.boxAir?.value, item.boxAir?.unit];
    case 'seal':
      return [`${item.number} ${item.state}`, undefined];
    case 'event':
      return [item.event, undefined];
    case 'outcome':
      return item.quantity === undefined
        ? [item.outcome, undefined]
        : [`${item.outcome} ${item.quantity.amount}`, item.quantity.unit];
    case 'inspection':
      return [item.lot, undefined];
    case 'instrument':
      return [`${item.type} ${item.name}`, undefined];
    case 'particular':
      return [`${item.of} ${item.quantity?.amount ?? ''}`.trim(), item.quantity?.unit];
    case 'exception':
      return [item.quantity?.amount, item.quantity?.unit];
    case 'contact':
      return [item.with, undefined];
    case 'bracing':
      return [item.device, undefined];
    case 'scale':
      return [item.gross?.value, item.gross?.unit];
    case 'shock':
      return [item.peak?.value, item.peak?.unit];
    case 'pallets':
      return [item.state, undefined];
    case 'pattern':
      return [item.pattern, undefined];
    case 'statement':
    case 'photo':
    case 'document':
    case 'unit-log':
    case 'readings':
      return [undefined, undefined];
    default:
      return assertNever(item);
  }
}

import type { EventName, Position, ReadingFrom } from '../../core/model/evidence.js';

/**
 * The question of one box. Answers to choices are the numbers printed beside it, so that every language types the
 * same.
 */
export type BoxQuestion =
  | { is: 'name' }
  | { is: 'statement' }
  /** Day of the times that follow; `transit` is between the stops. */
  | { is: 'day'; stop: string | 'transit' }
  | { is: 'event'; event: EventName; stop: string }
  | { is: 'thermometer' | 'pulp-at'; stop: string }
  /** What the thermometer showed in ice water. */
  | { is: 'ice'; stop: string }
  /** Who loaded and counted, how many, and how the unit was set. */
  | {
      is: 'particular';
      of: 'loaded-by' | 'counted-by' | 'count' | 'defrost' | 'fresh-air-vent';
      stop: string;
    }
  /** A portable recorder in the load. */
  | { is: 'recorder'; part: 'number' | 'where'; stop: string }
  | { is: 'pulp'; line: string; position: Position; stop: string; from: ReadingFrom }
  | { is: 'set-point'; shownBy: 'bill' | 'display'; stop: string }
  | { is: 'run'; stop: string }
  | { is: 'departure-reading'; at: 'box-air' | 'fuel'; stop: string }
  | { is: 'row'; row: number; stop: string }
  | { is: 'bracing'; part: 'device' | 'note'; stop: string }
  | { is: 'seal'; stop: string; state: 'applied' | 'found' }
  | { is: 'seal-state'; stop: string }
  | { is: 'notice'; part: 'with' | 'at' | 'about'; stop: string }
  /** How much of a line was taken, refused, short or damaged, and why. */
  | { is: 'outcome'; part: 'accepted' | 'refused' | 'short' | 'damaged' | 'why'; line: string; stop: string }
  /** Who at the receiver said what became of the goods, to whom and how. */
  | { is: 'outcome-said'; part: 'by' | 'told' | 'told-name' | 'how'; stop: string }
  /** An exception on the bill of lading: its words, of which line, and who signed it. */
  | { is: 'exception'; part: 'words' | 'line' | 'signed'; stop: string }
  /** What an inspection found of one lot at the stop. */
  | { is: 'inspection'; part: InspectionPart; stop: string }
  | { is: 'unit-check'; count: number; part: 'at' | 'box-air' | 'set-point' | 'fuel' | 'alarm' };

export type InspectionPart =
  | 'lot'
  | 'line'
  | 'at'
  | 'inspector'
  | 'count'
  | 'samples'
  | 'low'
  | 'high'
  | 'certificate'
  | 'requested-by'
  | 'requested-at'
  | 'defects';

export interface ChecklistBox {
  /** Printed in the box, and typed with its answer. */
  number: number;
  question: BoxQuestion;
}

export type ChecklistRow =
  | { is: 'boxes'; boxes: { box: ChecklistBox; width: number }[] }
  | {
      is: 'grid';
      columns: readonly (Position | `receiver-${Position}` | UnitCheckPart | OutcomePart)[];
      rows: { line?: string; letter?: string; count?: number; boxes: ChecklistBox[] }[];
    }
  /** One small box per row of pallets, nose first. */
  | { is: 'strip'; boxes: ChecklistBox[] }
  /** Photographs to take, to tick off; nothing is typed in from them. */
  | { is: 'ticks'; photos: string[] }
  | { is: 'lines'; box: ChecklistBox; lines: number };
export type OutcomePart = Extract<BoxQuestion, { is: 'outcome' }>['part'];
export type UnitCheckPart = Extract<BoxQuestion, { is: 'unit-check' }>['part'];

export interface ChecklistPart {
  is:
    | 'person'
    | 'before'
    | 'pulps'
    | 'leaving'
    | 'pattern'
    | 'notice'
    | 'transit'
    | 'arrival'
    | 'statement'
    | 'outcome'
    | 'exception'
    | 'inspection'
    | 'particulars';
  stop?: string;
  rows: ChecklistRow[];
}

/** Every box of a form in the order of its numbers. */
export function boxesOf(parts: readonly ChecklistPart[]): ChecklistBox[] {
  return parts.flatMap((part) => part.rows.flatMap(inRow)).sort((a, b) => a.number - b.number);
}

function inRow(row: ChecklistRow): ChecklistBox[] {
  switch (row.is) {
    case 'boxes':
      return row.boxes.map(({ box }) => box);
    case 'grid':
      return row.rows.flatMap(({ boxes }) => boxes);
    case 'strip':
      return row.boxes;
    case 'ticks':
      return [];
    case 'lines':
      return [row.box];
  }
}

/** The meaning of a choice by its number; the first is 1. */
export const CHOICES = {
  run: ['continuous', 'start-stop'],
  row: ['straight', 'turned', 'pinwheel', 'single'],
  bracing: ['air-bags', 'load-bars', 'straps', 'boards', 'foam-blocks', 'other'],
  'seal-state': ['intact', 'broken'],
  'outcome-why': ['temperature', 'decay', 'damage', 'frost', 'late', 'other'],
  'outcome-told': ['driver', 'carrier', 'dispatcher', 'shipper', 'consignor', 'broker', 'other'],
  'outcome-how': ['in-person', 'call', 'message', 'e-mail', 'letter', 'on-document'],
  'exception-signed': ['shipper', 'driver', 'shipper-and-driver', 'nobody'],
  who: ['shipper', 'driver', 'receiver', 'other'],
  notice: ['shipper', 'receiver', 'broker', 'dispatcher', 'insurer', 'carrier', 'inspector', 'other'],
} as const;

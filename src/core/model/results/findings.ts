/** What the record shows for and against the carrier. */
import type { Acceleration } from '../acceleration.js';
import type { EvidenceId } from '../evidence.js';
import type { TradeUnit } from '../quantity.js';
import type { Element } from '../rule-set.js';
import type { Zone } from '../time.js';
import type { PublishedLimit } from './published.js';

/** One finding. `facts` fill its sentence in templates/words. */
export interface Finding {
  id: string;
  weighs: 'helps' | 'hurts' | 'open';
  element: Element;
  /** Heavier first. */
  weight: number;
  evidence: EvidenceId[];
  /** The compartment that it is about, where the trailer has several. */
  compartment?: string;
  /** The rule id or computation that produced it. */
  by: string;
  facts: Record<string, string | number | boolean | FindingQuantity>;
}

/** Quantities keep their kind, so that words can show them in the reader's units and zone. */
export type FindingQuantity =
  | { is: 'temperature'; celsius: number }
  | { is: 'difference'; kelvin: number }
  | { is: 'duration'; seconds: number }
  | { is: 'time'; at: number; zone: Zone }
  | { is: 'degree-hours'; kelvinHours: number }
  | { is: 'share'; of: number }
  | { is: 'published'; of: 'temperature' | 'humidity'; by: PublishedLimit[] }
  | { is: 'length'; metres: number }
  | { is: 'weight'; kilograms: number }
  | ({ is: 'acceleration' } & Acceleration)
  | { is: 'line'; line: string }
  | { is: 'stop'; stop: string }
  | { is: 'amount'; value: number; unit: TradeUnit; of?: number };

import type { Acceleration } from '../../model/acceleration.js';
import type { EvidenceId } from '../../model/evidence.js';
import { omitUndefined } from '../../model/omit-undefined.js';
import type { TradeUnit } from '../../model/quantity.js';
import type {
  Finding,
  FindingQuantity,
  GapResult,
  LineMargin,
  LoadPlan,
  LoadWeights,
  ProductResult,
  PulpComparison,
  PulpGroup,
  RecordersResult,
  ShockResult,
  StopDoors,
} from '../../model/results.js';
import type { RecordState } from '../../model/state.js';
import type { Zone } from '../../model/time.js';
import type { Computed } from '../computed.js';
import { catalogue, type FactsOf, type FindingId } from './catalogue.js';

/** What findings are computed from. */
export interface FindingContext extends Computed {
  pulps: readonly PulpGroup[];
  margins?: readonly LineMargin[];
  product?: readonly ProductResult[];
  pulpComparisons?: readonly PulpComparison[];
  /** Absent when no row was recorded. */
  loading?: LoadPlan;
  /** Absent when no weight is known and nothing was weighed. */
  weights?: LoadWeights;
  /** Absent when no door was noted or logged open. */
  doors?: readonly StopDoors[];
  /** Absent when nothing was recorded of shocks. */
  shocks?: readonly ShockResult[];
  gaps: readonly GapResult[];
  /** Absent where the unit's own log is all there is. */
  recorders?: RecordersResult;
}

/** A finding of the catalogue, with exactly the facts that the catalogue lists for it. */
export function finding<I extends FindingId>(
  id: I,
  by: string,
  evidence: readonly EvidenceId[],
  facts: FactsOf<I>,
  weighs: Finding['weighs'] = catalogue[id].weighs,
): Finding {
  const given: Finding['facts'] = {};
  for (const [name, value] of Object.entries<Finding['facts'][string] | undefined>(facts))
    if (value !== undefined) given[name] = value;
  const { element, weight } = catalogue[id];
  return { id, weighs, element, weight, evidence: [...new Set(evidence)], by, facts: given };
}

/** The same finding, about one compartment. */
export const inCompartment = (compartment: string | undefined, one: Finding): Finding => ({
  ...one,
  ...omitUndefined({ compartment }),
});

type Quantity<K extends FindingQuantity['is']> = Extract<FindingQuantity, { is: K }>;
export const temperature = (celsius: number): Quantity<'temperature'> => ({ is: 'temperature', celsius });
export const difference = (kelvin: number): Quantity<'difference'> => ({ is: 'difference', kelvin });
export const duration = (seconds: number): Quantity<'duration'> => ({ is: 'duration', seconds });
export const time = (at: number, zone: Zone): Quantity<'time'> => ({ is: 'time', at, zone });
export const share = (of: number): Quantity<'share'> => ({ is: 'share', of });
export const length = (metres: number): Quantity<'length'> => ({ is: 'length', metres });
export const weightOf = (kilograms: number): Quantity<'weight'> => ({ is: 'weight', kilograms });
export const acceleration = (of: Acceleration): Quantity<'acceleration'> => ({ is: 'acceleration', ...of });
export const lineRef = (line: string): Quantity<'line'> => ({ is: 'line', line });
export const stopRef = (stop: string): Quantity<'stop'> => ({ is: 'stop', stop });
export const amount = (value: number, unit: TradeUnit, of?: number): Quantity<'amount'> => ({
  is: 'amount',
  value,
  unit,
  ...omitUndefined({ of }),
});
export const degreeHours = (kelvinHours: number): Quantity<'degree-hours'> => ({
  is: 'degree-hours',
  kelvinHours,
});

/** The zone of a stop; without a stop, of the first stop. */
export function zoneOf(state: RecordState, stop?: string): Zone {
  const { stops } = state.delivery;
  return (stops.find((one) => one.id === stop) ?? stops[0])?.zone ?? ('UTC' as Zone);
}

import type { Finding, FindingQuantity } from '../../model/results.js';
import type { Element } from '../../model/rule-set.js';
import { airCatalogue } from './catalogue-air.js';
import { handlingCatalogue } from './catalogue-handling.js';
import { instructionsCatalogue } from './catalogue-instructions.js';
import { loadingCatalogue } from './catalogue-loading.js';
import { outcomesCatalogue } from './catalogue-outcomes.js';
import { productCatalogue } from './catalogue-product.js';
import {
  air,
  bothEnds,
  coverage,
  exceptionNoted,
  excursions,
  freezingPulps,
  pulps,
  pulpsNear,
  pulpsOut,
} from './fact-shapes.js';

/** Kinds of facts; a question mark says that the fact may be absent. */
interface Kinds {
  text: string;
  count: number;
  flag: boolean;
  temperature: Extract<FindingQuantity, { is: 'temperature' }>;
  difference: Extract<FindingQuantity, { is: 'difference' }>;
  duration: Extract<FindingQuantity, { is: 'duration' }>;
  time: Extract<FindingQuantity, { is: 'time' }>;
  'degree-hours': Extract<FindingQuantity, { is: 'degree-hours' }>;
  share: Extract<FindingQuantity, { is: 'share' }>;
  published: Extract<FindingQuantity, { is: 'published' }>;
  length: Extract<FindingQuantity, { is: 'length' }>;
  weight: Extract<FindingQuantity, { is: 'weight' }>;
  acceleration: Extract<FindingQuantity, { is: 'acceleration' }>;
  line: Extract<FindingQuantity, { is: 'line' }>;
  stop: Extract<FindingQuantity, { is: 'stop' }>;
  amount: Extract<FindingQuantity, { is: 'amount' }>;
}
type Kind = keyof Kinds | `${keyof Kinds}?`;

export interface CatalogueEntry {
  /** The usual side; a finding that weighs otherwise in its context says so itself. */
  weighs: Finding['weighs'];
  element: Element;
  /** 0 to 100, heavier first; a convention of this project, not a measure. */
  weight: number;
  facts: Record<string, Kind>;
}

/**
 * Every finding: the side it weighs for, the element of a claim it concerns, and the facts its sentence can use.
 * The sentences are in templates/words/<language>/findings/<id>.md.
 */
export const catalogue = {
  'pulps-at-loading-in-band': {
    weighs: 'helps',
    element: 'good-condition-at-receipt',
    weight: 70,
    facts: pulps,
  },
  'pulps-at-loading-above-band': { weighs: 'helps', element: 'act-of-shipper', weight: 88, facts: pulpsOut },
  'pulps-at-loading-below-band': { weighs: 'helps', element: 'act-of-shipper', weight: 84, facts: pulpsOut },
  'pulps-at-loading-undecided': {
    weighs: 'open',
    element: 'good-condition-at-receipt',
    weight: 68,
    facts: pulpsNear,
  },
  'no-pulps-at-loading': {
    weighs: 'open',
    element: 'good-condition-at-receipt',
    weight: 72,
    facts: { line: 'line', stop: 'stop' },
  },
  'warm-at-loading-told': {
    weighs: 'helps',
    element: 'act-of-shipper',
    weight: 78,
    facts: { line: 'line', with: 'text', at: 'time', about: 'text' },
  },
  'contact-subject-not-recorded': {
    weighs: 'open',
    element: 'act-of-shipper',
    weight: 77,
    facts: { line: 'line', with: 'text', at: 'time', about: 'text' },
  },
  'exception-signed': {
    weighs: 'helps',
    element: 'good-condition-at-receipt',
    weight: 97,
    facts: exceptionNoted,
  },
  'exception-not-signed': {
    weighs: 'open',
    element: 'good-condition-at-receipt',
    weight: 67,
    facts: exceptionNoted,
  },
  'warm-at-loading-nobody-told': {
    weighs: 'hurts',
    element: 'act-of-shipper',
    weight: 79,
    facts: { line: 'line', max: 'temperature', high: 'temperature' },
  },
  'pulps-at-delivery-in-band': {
    weighs: 'helps',
    element: 'condition-at-delivery',
    weight: 90,
    facts: pulps,
  },
  'pulps-at-delivery-above-band': {
    weighs: 'hurts',
    element: 'condition-at-delivery',
    weight: 92,
    facts: pulpsOut,
  },
  'pulps-at-delivery-below-band': {
    weighs: 'hurts',
    element: 'condition-at-delivery',
    weight: 91,
    facts: pulpsOut,
  },
  'pulps-at-delivery-undecided': {
    weighs: 'open',
    element: 'condition-at-delivery',
    weight: 70,
    facts: pulpsNear,
  },
  'pulps-at-delivery-frozen': {
    weighs: 'hurts',
    element: 'condition-at-delivery',
    weight: 93,
    facts: freezingPulps,
  },
  'no-pulps-at-delivery': {
    weighs: 'open',
    element: 'condition-at-delivery',
    weight: 71,
    facts: { line: 'line', stop: 'stop' },
  },
  'warmed-on-the-way': { weighs: 'hurts', element: 'care-in-transit', weight: 96, facts: bothEnds },
  'warm-at-delivery-no-loading-pulps': {
    weighs: 'hurts',
    element: 'good-condition-at-receipt',
    weight: 94,
    facts: { line: 'line', deliveryMax: 'temperature', high: 'temperature' },
  },
  'air-in-band': { weighs: 'helps', element: 'care-in-transit', weight: 85, facts: air },
  'air-mostly-in-band': { weighs: 'open', element: 'care-in-transit', weight: 80, facts: air },
  'air-out-of-band': { weighs: 'hurts', element: 'care-in-transit', weight: 89, facts: air },
  'excursions-unexplained': {
    weighs: 'hurts',
    element: 'care-in-transit',
    weight: 83,
    facts: { ...excursions, heatIn: 'count?' },
  },
  'log-covers-custody': { weighs: 'helps', element: 'care-in-transit', weight: 65, facts: coverage },
  'log-has-gaps': { weighs: 'hurts', element: 'care-in-transit', weight: 77, facts: coverage },
  'compartment-not-logged': { weighs: 'hurts', element: 'care-in-transit', weight: 76, facts: {} },
  'no-unit-log': { weighs: 'hurts', element: 'care-in-transit', weight: 81, facts: {} },
  'unit-off-logged': {
    weighs: 'hurts',
    element: 'care-in-transit',
    weight: 68,
    facts: { count: 'count', total: 'duration', longest: 'duration', before: 'flag?' },
  },
  'log-clock-corrected': {
    weighs: 'open',
    element: 'care-in-transit',
    weight: 20,
    facts: { added: 'duration', slow: 'flag' },
  },
  'rounds-kept': {
    weighs: 'helps',
    element: 'care-in-transit',
    weight: 55,
    facts: { count: 'count', longest: 'duration', limit: 'duration', beside: 'flag?' },
  },
  'rounds-far-apart': {
    weighs: 'hurts',
    element: 'care-in-transit',
    weight: 58,
    facts: { count: 'count', longest: 'duration', limit: 'duration' },
  },
  'alarms-seen': {
    weighs: 'open',
    element: 'care-in-transit',
    weight: 57,
    facts: { count: 'count', alarms: 'text', firstAt: 'time?' },
  },
  'seal-same': {
    weighs: 'helps',
    element: 'care-in-transit',
    weight: 66,
    facts: { number: 'text' },
  },
  'seal-differs': {
    weighs: 'hurts',
    element: 'care-in-transit',
    weight: 87,
    facts: { applied: 'text', found: 'text' },
  },
  'seal-broken': {
    weighs: 'hurts',
    element: 'care-in-transit',
    weight: 86,
    facts: { number: 'text', at: 'time?' },
  },
  'seal-not-checked': {
    weighs: 'open',
    element: 'care-in-transit',
    weight: 54,
    facts: { number: 'text' },
  },
  'evidence-lost': {
    weighs: 'hurts',
    element: 'care-in-transit',
    weight: 40,
    facts: { count: 'count' },
  },
  ...airCatalogue,
  ...instructionsCatalogue,
  ...handlingCatalogue,
  ...loadingCatalogue,
  ...outcomesCatalogue,
  ...productCatalogue,
} as const satisfies Record<string, CatalogueEntry>;

export type FindingId = keyof typeof catalogue;
export const findingIds = Object.keys(catalogue) as FindingId[];

type Needed<F> = { [N in keyof F as F[N] extends `${string}?` ? never : N]: ValueOf<F[N]> };
type Possible<F> = { [N in keyof F as F[N] extends `${string}?` ? N : never]?: ValueOf<F[N]> | undefined };
type ValueOf<K> = K extends keyof Kinds
  ? Kinds[K]
  : K extends `${infer B extends keyof Kinds}?`
    ? Kinds[B]
    : never;
/** The facts of one finding, by name and kind. */
export type FactsOf<I extends FindingId> = Needed<(typeof catalogue)[I]['facts']> &
  Possible<(typeof catalogue)[I]['facts']>;

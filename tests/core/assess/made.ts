import { type DeliveryInput, delivery } from '../../../src/core/model/delivery.js';
import type { Channel, Evidence, EvidenceId, Sha256, StateColumn } from '../../../src/core/model/evidence.js';
import { type RuleSet, ruleSet } from '../../../src/core/model/rule-set.js';
import type { EvidenceItem, RecordState } from '../../../src/core/model/state.js';
import { type Instant, type KnownTime, toInstant, type Zone } from '../../../src/core/model/time.js';
import type { UnitLog } from '../../../src/core/model/unit-log.js';

/** Invented deliveries, evidence and logs for tests of what is computed. */

export const HOUR = 3_600_000;
export const DAY_START = Date.parse('2026-07-14T11:00:00Z');
const UTC = 'UTC' as Zone;
export const HASH = 'ab'.repeat(32) as Sha256;

export const facts = (change: Partial<DeliveryInput> = {}) =>
  delivery.parse({
    delivery: 'T-1',
    parties: { carrier: { name: 'Copper Basin Carriers' }, shipper: { name: 'Dry Wash Growers' } },
    equipment: { trailer: { number: 'T-118', airChute: true, drains: 'rear' } },
    stops: [
      { id: 'load-1', does: 'load', place: 'Cooler A', zone: 'America/Phoenix' },
      { id: 'drop-1', does: 'unload', place: 'Warehouse B', zone: 'America/Chicago' },
    ],
    lines: [
      {
        id: 'romaine',
        goods: 'lettuce-romaine',
        from: 'load-1',
        to: 'drop-1',
        instruction: { setPoint: '36 °F', tolerance: '2 °F', run: 'continuous' },
      },
    ],
    // Readings that name it are decided close to a limit; those that name none are good to 2 °F.
    instruments: [{ name: 'P-7', accuracy: '0.5 °F', resolution: '0.1 °F' }],
    ...change,
  });

export const at = (hours: number): KnownTime => ({
  is: 'known',
  instant: toInstant(DAY_START + hours * HOUR),
  zone: UTC,
  basis: 'typed',
  uncertaintySeconds: 0,
});
export const instantAt = (hours: number): Instant => toInstant(DAY_START + hours * HOUR);

type Loose<T> = T extends unknown
  ? Omit<T, 'evidence' | 'source' | 'file' | 'flags' | 'time'> & Partial<T>
  : never;
/** Evidence with the fields that a test does not care about filled in; ids count from e1. */
export function items(...list: Loose<Evidence>[]): EvidenceItem[] {
  return list.map((item, index) => {
    const evidence = `e${index + 1}` as EvidenceId;
    const filed = {
      file: { name: `${evidence}.jpg`, bytes: 1, sha256: HASH, type: 'image/jpeg' },
      flags: [],
    };
    return {
      evidence,
      source: { is: 'typed' },
      time: { is: 'none', why: 'not stated' },
      ...(['photo', 'document', 'unit-log', 'readings'].includes(item.kind) ? filed : {}),
      seq: index + 1,
      enteredAt: instantAt(0),
      enteredBy: 'R. Quill',
      describedBy: [],
      correctedBy: [],
      ...item,
    } as EvidenceItem;
  });
}

export function state(evidence: EvidenceItem[], change: Partial<DeliveryInput> = {}): RecordState {
  return {
    delivery: facts(change),
    deliveryHash: HASH,
    evidence,
    notCounted: [],
    corrections: [],
    strikes: [],
    merges: [],
    clocks: [],
    published: [],
    timeStamps: [],
    dossiers: [],
    claims: [],
    size: evidence.length + 1,
    root: HASH,
  };
}

/** A log from columns; times in hours after the day's start, temperatures in °F unless said otherwise. */
export function log(
  hours: readonly number[],
  channels: Partial<Record<Channel, readonly number[]>>,
  states: Partial<Record<StateColumn, readonly string[]>> = {},
  unit: '°F' | '°C' = '°F',
): UnitLog {
  const columns: UnitLog['channels'] = {};
  for (const [name, values] of Object.entries(channels))
    columns[name as Channel] = Float64Array.from(values, (v) => (unit === '°F' ? ((v - 32) * 5) / 9 : v));
  return {
    evidence: 'e900' as EvidenceId,
    zone: UTC,
    times: Float64Array.from(hours, (h) => DAY_START + h * HOUR),
    channels: columns,
    states,
    rows: Float64Array.from(hours, (_, i) => i + 2),
    problems: [],
    problemCount: 0,
    addedSeconds: 0,
  };
}

export const rulesOf = (...rules: unknown[]): RuleSet =>
  ruleSet.parse({
    ruleSet: 'test',
    version: '1',
    title: 'Rules of a test',
    tolerance: '2 °F',
    rules: rules.map((rule) => ({
      id: 'a-rule',
      stage: 'loading',
      title: 'A rule',
      proves: ['care-in-transit'],
      why: 'for the test',
      how: 'for the test',
      basis: 'common practice',
      ...(rule as object),
    })),
  });

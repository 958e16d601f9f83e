import { describe, expect, it } from 'vitest';
import { custodyOf } from '../../../src/core/assess/custody.js';
import { readMilestones } from '../../../src/core/assess/milestones.js';
import { outcomesOf } from '../../../src/core/assess/outcomes.js';
import { at, DAY_START, HOUR, items, state } from './made.js';

type Recorded = Parameters<typeof items>[number];
const LOAD = { stop: 'load-1' };
const DROP = { stop: 'drop-1' };
const paper = (is: 'bill-of-lading' | 'proof-of-delivery' | 'sale-account', hour: number): Recorded => ({
  kind: 'document',
  subject: { is, sure: 'confirmed' },
  place: is === 'bill-of-lading' ? LOAD : DROP,
  time: at(hour),
});
const outcome = (verdict: 'accepted' | 'refused', hour: number): Recorded => ({
  kind: 'outcome',
  outcome: verdict,
  reasons: [],
  documents: [],
  line: 'romaine',
  place: DROP,
  time: at(hour),
});
const departed: Recorded = { kind: 'event', event: 'departed', place: LOAD, time: at(3) };

function span(...told: Recorded[]) {
  const record = state(items(...told));
  const milestones = readMilestones(record, DAY_START + 500 * HOUR);
  const found = custodyOf(record, milestones, outcomesOf(record, milestones));
  const hour = (one: { at: number; basis: string } | undefined) =>
    one && [(one.at - DAY_START) / HOUR, one.basis];
  return found && [hour(found.from), hour(found.to), found.heldAfterRefusal];
}

describe('custody', () => {
  it.each<[string, Recorded[], unknown]>([
    ['is not known when nothing shows that goods were received', [outcome('accepted', 40)], undefined],
    [
      'runs from signed receipt to signed receipt',
      [paper('bill-of-lading', 2), departed, outcome('accepted', 40), paper('proof-of-delivery', 41)],
      [[2, 'bill-signed'], [41, 'receipt-signed'], []],
    ],
    [
      'runs from departure where no receipt shows it',
      [departed, outcome('accepted', 40)],
      [[3, 'departed'], [40, 'accepted'], []],
    ],
    [
      'goes on after a refusal',
      [departed, outcome('refused', 40)],
      [[3, 'departed'], undefined, ['romaine']],
    ],
    [
      'ends with the disposal of what was refused',
      [departed, outcome('refused', 40), paper('sale-account', 90)],
      [[3, 'departed'], [90, 'disposed'], []],
    ],
  ])('%s', (_, told, expected) => {
    expect(span(...told)).toEqual(expected);
  });
});

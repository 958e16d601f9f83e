import { assess } from '../../dist/core/assess/assess.js';
import { gapsOf } from '../../dist/core/assess/gaps/gaps.js';
import { readMilestones } from '../../dist/core/assess/milestones.js';
import { delivery } from '../../dist/core/model/delivery.js';
import { loadRuleSet } from '../../dist/jobs/rule-set.js';

// Rules held against a long record: a check that people run on the dock must not make them wait. The record and the
// set are read beforehand. What is aimed at: less than 50 ms on a plain machine.
export const name = 'gaps: the produce set against a record of 2,000 entries';
export const reference = "JSON.parse of the same record's evidence";

const ROUNDS = 30;
const START = Date.parse('2026-07-14T11:00:00Z');
const MINUTE = 60_000;
const known = (/** @type {number} */ minute) => ({
  is: 'known',
  instant: new Date(START + minute * MINUTE).toISOString(),
  zone: 'UTC',
  basis: 'typed',
  uncertaintySeconds: 60,
});

const facts = delivery.parse({
  delivery: 'BENCH-1',
  parties: { carrier: { name: 'Copper Basin Carriers' } },
  equipment: { trailer: { number: 'T-118', airChute: true, drains: 'rear' } },
  stops: [
    { id: 'load-1', does: 'load', place: 'Cooler A', zone: 'America/Phoenix' },
    { id: 'load-2', does: 'load', place: 'Cooler B', zone: 'America/Phoenix' },
    { id: 'drop-1', does: 'unload', place: 'Warehouse C', zone: 'America/Chicago' },
  ],
  lines: Array.from({ length: 8 }, (_, i) => ({
    id: `line-${i}`,
    goods: i % 2 === 0 ? 'lettuce-romaine' : 'broccoli',
    from: i % 3 === 0 ? 'load-2' : 'load-1',
    to: 'drop-1',
    iced: i % 2 === 1,
    instruction: { setPoint: '36 °F', tolerance: '2 °F', run: 'continuous' },
  })),
});

const EVENTS = [
  ['arrived', 'load-1', 0],
  ['doors-opened', 'load-1', 30],
  ['loading-began', 'load-1', 40],
  ['doors-closed', 'load-1', 120],
  ['departed', 'load-1', 130],
  ['arrived', 'load-2', 180],
  ['doors-closed', 'load-2', 280],
  ['departed', 'load-2', 290],
  ['arrived', 'drop-1', 2400],
  ['doors-opened', 'drop-1', 2430],
  ['refused', 'drop-1', 2500],
];
const SUBJECTS = [
  'pulp-display',
  'unit-display',
  'drains',
  'load-pattern',
  'bracing',
  'seal',
  'damage',
  'other-scene',
];
const POSITIONS = ['nose', 'middle', 'tail'];

/** One piece of evidence in each kind that rules look at, in turn. */
function piece(/** @type {number} */ i) {
  const place = { stop: ['load-1', 'load-2', 'drop-1'][i % 3], position: POSITIONS[i % 3] };
  const line = `line-${i % 8}`;
  const time = known(i % 2500);
  switch (i % 5) {
    case 0:
      return {
        kind: 'pulp',
        temperature: { value: 36 + (i % 7) / 10, unit: '°F' },
        from: 'driver',
        place,
        line,
        time,
      };
    case 1:
      return { kind: 'round', fuel: 0.8, boxAir: { value: 36, unit: '°F' }, alarms: [], time };
    case 2:
      return { kind: 'contact', with: 'dispatcher', how: 'call', about: 'all well', time };
    default:
      return {
        kind: 'photo',
        subject: { is: SUBJECTS[i % SUBJECTS.length], sure: i % 2 === 0 ? 'confirmed' : 'proposed' },
        file: { name: `${i}.jpg`, bytes: 1, sha256: 'ab'.repeat(32), type: 'image/jpeg' },
        flags: i % 11 === 0 ? [{ is: 'blurred', detail: 'soft' }] : [],
        place,
        line,
        time,
      };
  }
}

const pieces = [
  ...EVENTS.map(([event, stop, minute]) => ({
    kind: 'event',
    event,
    place: { stop },
    time: known(Number(minute)),
  })),
  ...Array.from({ length: 2000 - EVENTS.length }, (_, i) => piece(i)),
];
const evidence = pieces.map((one, i) => ({
  evidence: `e${i + 1}`,
  source: { is: 'typed' },
  seq: i + 1,
  enteredAt: known(0).instant,
  enteredBy: 'R. Quill',
  describedBy: [],
  ...one,
}));

const { ruleSet, sha256 } = await loadRuleSet('produce', '.');
/** @type {any} */
const state = {
  delivery: facts,
  deliveryHash: 'ab'.repeat(32),
  evidence,
  clocks: [],
  published: [],
  timeStamps: [],
  dossiers: [],
  claims: [],
  size: evidence.length + 1,
  root: 'ab'.repeat(32),
};
/** @type {any} */
const at = known(3000).instant;
const now = START + 3000 * MINUTE;
const assessment = assess({ state, logs: [], ruleSet: { ruleSet, sha256 }, at });
const context = {
  state,
  ruleSet,
  now,
  milestones: readMilestones(state, now),
  logs: [],
  temperatures: assessment.temperatures,
  outcomes: assessment.outcomes,
  setPoints: assessment.setPoints,
};

/** The best of some runs, in milliseconds. */
function best(/** @type {() => unknown} */ work) {
  let least = Number.POSITIVE_INFINITY;
  for (let i = 0; i < ROUNDS; i++) {
    const began = performance.now();
    work();
    least = Math.min(least, performance.now() - began);
  }
  return least;
}

export async function run() {
  const text = JSON.stringify(evidence);
  return [
    {
      what: `${ruleSet.rules.length} rules, time`,
      unit: 'ms',
      own: best(() => gapsOf(context)),
      reference: best(() => JSON.parse(text)),
    },
  ];
}

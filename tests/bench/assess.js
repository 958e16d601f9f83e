// Everything that is computed of a record of very many readings must grow no faster than they do.
import { assess } from '../../dist/core/assess/assess.js';
import { delivery } from '../../dist/core/model/delivery.js';
import { loadRuleSet } from '../../dist/jobs/rule-set.js';

export const name = 'assess: 10,000 readings';
export const reference = 'ten times the time for 1,000 readings of the same kinds';

const ROUNDS = 5;
const START = Date.parse('2026-05-15T11:00:00Z');
const STOPS = ['load-1', 'drop-1'];
const GOODS = ['lettuce-romaine', 'celery', 'broccoli'];

const facts = delivery.parse({
  delivery: 'BENCH-1',
  parties: { carrier: { name: 'Copper Basin Carriers' } },
  equipment: { trailer: { number: 'T-118' } },
  stops: [
    { id: 'load-1', does: 'load', place: 'Cooler A', zone: 'America/Phoenix' },
    { id: 'drop-1', does: 'unload', place: 'Warehouse C', zone: 'America/Chicago' },
  ],
  lines: GOODS.map((goods) => ({
    id: goods,
    goods,
    from: 'load-1',
    to: 'drop-1',
    instruction: { setPoint: '36 °F', tolerance: '2 °F' },
  })),
});

/** Pulps and looks at the unit for the most part, as a long trip has them, and all other kinds. @param {number} i */
function bodyOf(i) {
  switch (i % 10) {
    case 0:
      return {
        kind: 'contact',
        with: ['dispatcher', 'shipper'][i % 3] ?? 'broker',
        how: 'call',
        about: `no. ${i}`,
      };
    case 1:
      return {
        kind: 'set-point',
        temperature: { value: 36 + (i % 3), unit: '°F' },
        shownBy: ['display', 'dispatcher', 'shipper'][i % 7] ?? 'bill',
      };
    case 2:
      return { kind: 'seal', number: `S-${i % 100}`, state: ['applied', 'intact'][i % 3] ?? 'removed' };
    case 3:
      return { kind: 'event', event: ['arrived', 'doors-opened', 'doors-closed'][i % 7] ?? 'departed' };
    case 4:
    case 5:
    case 6:
      return {
        kind: 'round',
        boxAir: { value: 35 + (i % 30) / 10, unit: '°F' },
        alarms: i % 8 ? [] : ['63'],
      };
    default:
      return {
        kind: 'pulp',
        temperature: { value: 34 + (i % 50) / 10, unit: '°F' },
        from: 'driver',
        line: GOODS[i % 3],
      };
  }
}

/** @param {number} count */
function stateOf(count) {
  const evidence = Array.from({ length: count }, (_, i) => ({
    evidence: `e${i + 1}`,
    source: { is: 'typed' },
    seq: i + 1,
    enteredAt: new Date(START).toISOString(),
    enteredBy: 'R. Quill',
    describedBy: [],
    place: { stop: STOPS[i < count / 2 ? 0 : 1], position: ['nose', 'middle', 'tail'][i % 3] },
    time: {
      is: 'known',
      instant: new Date(START + i * Math.floor((59 * 86_400_000) / count)).toISOString(),
      zone: 'UTC',
      basis: 'typed',
      uncertaintySeconds: 60,
    },
    ...bodyOf(i),
  }));
  return {
    delivery: facts,
    deliveryHash: 'ab'.repeat(32),
    evidence,
    clocks: [],
    published: [],
    timeStamps: [],
    dossiers: [],
    claims: [],
    size: count + 1,
    root: 'ab'.repeat(32),
  };
}

export async function run() {
  const ruleSet = await loadRuleSet('produce', '.');
  const best = (/** @type {number} */ count) => {
    /** @type {any} */
    const state = stateOf(count);
    let least = Number.POSITIVE_INFINITY;
    for (let i = 0; i < ROUNDS; i++) {
      const before = process.cpuUsage();
      /** @type {any} */
      const at = '2026-09-01T00:00:00.000Z';
      assess({ state, logs: [], ruleSet, at });
      const { user, system } = process.cpuUsage(before);
      least = Math.min(least, (user + system) / 1e6);
    }
    return least;
  };
  const few = best(1_000);
  return [{ what: 'processor time', unit: 's', own: best(10_000), reference: 10 * few }];
}

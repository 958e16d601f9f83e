import { describe, expect, it } from 'vitest';
import { assess } from '../../../src/core/assess/assess.js';
import { catalogue, type FindingId, findingIds } from '../../../src/core/assess/findings/catalogue.js';
import type { DeliveryInput } from '../../../src/core/model/delivery.js';
import type { Signatory } from '../../../src/core/model/evidence/signatory.js';
import type {
  AirBlock,
  ContactSubject,
  OutcomeReason,
  OutcomeVerdict,
  RowPattern,
} from '../../../src/core/model/evidence.js';
import { omitUndefined } from '../../../src/core/model/omit-undefined.js';
import type { Finding } from '../../../src/core/model/results.js';
import type { EvidenceItem } from '../../../src/core/model/state.js';
import { toCelsius } from '../../../src/core/model/temperature.js';
import type { UnitLog } from '../../../src/core/model/unit-log.js';
import { at, HASH, instantAt, items, log, rulesOf, state } from './made.js';

const F = (value: number) => ({ value, unit: '°F' as const });
const LOAD = { stop: 'load-1' };
const DROP = { stop: 'drop-1' };
const course = [
  { kind: 'event', event: 'doors-closed', place: LOAD, time: at(2) },
  { kind: 'event', event: 'departed', place: LOAD, time: at(3) },
  { kind: 'event', event: 'arrived', place: DROP, time: at(10) },
  { kind: 'event', event: 'doors-opened', place: DROP, time: at(11) },
  { kind: 'event', event: 'unloaded', place: DROP, time: at(13) },
] as const;
const pulp = (value: number, where: { stop: string }) =>
  ({
    kind: 'pulp',
    temperature: F(value),
    from: 'driver',
    instrument: 'P-7',
    place: where,
    time: at(where === LOAD ? 1 : 12),
  }) as const;
const seal = (number: string, as: 'applied' | 'intact' | 'broken') =>
  ({
    kind: 'seal',
    number,
    state: as,
    place: as === 'applied' ? LOAD : DROP,
    time: at(as === 'applied' ? 2 : 11),
  }) as const;
const said = (value: number, shownBy: 'display' | 'dispatcher') =>
  ({ kind: 'set-point', temperature: F(value), shownBy, time: at(2.5) }) as const;
const look = (hour: number, alarms: string[] = []) => ({ kind: 'round' as const, alarms, time: at(hour) });
const hours = Array.from({ length: 37 }, (_, i) => 2 + i / 4);
const air = (value: (hour: number) => number, setPoint?: (hour: number) => number) =>
  log(hours, {
    'return-air': hours.map(value),
    ...omitUndefined({ 'set-point': setPoint && hours.map(setPoint) }),
  });

function found(
  evidence: EvidenceItem[],
  {
    logs = [] as UnitLog[],
    change = {} as Partial<DeliveryInput>,
    rule = { needs: { event: 'arrived' } } as object,
  } = {},
): Finding[] {
  return assess({
    state: state(evidence, change),
    logs,
    ruleSet: { ruleSet: rulesOf(rule), sha256: HASH },
    at: instantAt(40),
  }).findings;
}

const line = (goods: string, setPoint?: string) => ({
  lines: [
    {
      id: 'a',
      goods,
      from: 'load-1',
      to: 'drop-1',
      ...omitUndefined({ instruction: setPoint ? { setPoint } : undefined }),
    },
  ],
});
const trailer = (more: object): Partial<DeliveryInput> => ({
  equipment: { trailer: { number: 'T-118', insideWidth: '99 in', drains: 'rear', ...more } },
});
const load = (more: object): Partial<DeliveryInput> => ({
  ...trailer({}),
  lines: [{ id: 'a', goods: 'lettuce-romaine', from: 'load-1', to: 'drop-1', ...more }],
});
const twoLines: Partial<DeliveryInput> = {
  ...trailer({}),
  lines: [
    { id: 'dry', goods: 'celery', from: 'load-1', to: 'drop-1' },
    { id: 'iced', goods: 'broccoli', iced: true, from: 'load-1', to: 'drop-1' },
  ],
};
const goods = (...names: string[]): Partial<DeliveryInput> => ({
  lines: names.map((name) => ({ id: name, goods: name, from: 'load-1', to: 'drop-1' })),
});
const rows = (pattern: RowPattern, from: number, to: number, of?: string) =>
  ({
    kind: 'pattern',
    pattern,
    rows: { from, to },
    blocks: [] as AirBlock[],
    place: LOAD,
    time: at(1.5),
    ...omitUndefined({ line: of }),
  }) as const;
const outcome = (verdict: OutcomeVerdict, reasons: OutcomeReason[] = [], cartons?: string) => ({
  kind: 'outcome' as const,
  outcome: verdict,
  reasons,
  documents: [],
  line: 'romaine',
  place: DROP,
  time: at(12),
  ...omitUndefined({
    quantity: cartons === undefined ? undefined : { amount: cartons, unit: 'cartons' as const },
  }),
});
const jolt = (g: number, threshold?: number) =>
  ({
    kind: 'shock',
    what: 'shock',
    peak: { value: g, unit: 'g' },
    time: at(5),
    ...omitUndefined({
      threshold: threshold === undefined ? undefined : { value: threshold, unit: 'g' as const },
    }),
  }) as const;
const threeStops = [
  { id: 'load-1', does: 'load' as const, place: 'Cooler A', zone: 'America/Phoenix' },
  { id: 'drop-0', does: 'unload' as const, place: 'Halfway', zone: 'America/Denver' },
  { id: 'drop-1', does: 'unload' as const, place: 'Warehouse B', zone: 'America/Chicago' },
];
const weighed = { kind: 'scale', steer: { value: 5, unit: 't' }, time: at(2.5), place: LOAD } as const;
/** A steer axle of 4.9 t empty. */
const limits = (steer: string): Partial<DeliveryInput> => ({
  equipment: {
    tractor: { number: '7', axles: { wheelbase: '4 m', fifthWheel: '1 m' } },
    trailer: { number: 'T-118', axles: { kingpin: '1 m', group: '11 m' } },
    empty: { steer: '4.9 t' },
    limits: { steer },
  },
});
type Call = Extract<Parameters<typeof items>[number], { kind: 'contact' }>;
const call = {
  kind: 'contact' as const,
  with: 'shipper' as Call['with'],
  how: 'call' as const,
  about: 'product is warm',
  subjects: ['pulp-temperatures'] as ContactSubject[],
  time: at(1.5),
};
const off = log(
  hours,
  { 'return-air': hours.map(() => 36) },
  { power: hours.map((h) => (h === 5 || h === 5.25 ? 'off' : 'on')) },
);

const { subjects: _, ...unclear } = call;
const exceptionAt = (more: { signedBy?: Signatory[]; writtenBy?: Signatory }) => ({
  kind: 'exception' as const,
  words: '4 pallets warm, 41 to 43 F',
  reasons: [],
  signedBy: [],
  documents: [],
  line: 'romaine',
  place: LOAD,
  time: at(1.6),
  ...more,
});

/** So many hours after five o'clock, milliseconds. */
const at5 = (more: number) => Date.parse(instantAt(5 + more));
const bumps = (hour: number) =>
  36 + 9 * Math.exp(-((hour - 4.6) ** 2) * 20) + 6 * Math.exp(-((hour - 7.3) ** 2) * 9);
/** A recorder in the load, by the quarter of an hour. */
const recorder = (value: (hour: number) => number): UnitLog => ({
  ...log(hours, { probe: hours.map(value) }),
  evidence: 'e901' as UnitLog['evidence'],
});
/** By the minute from the start of the day, with a clock that is so many hours slow. */
const fine = (channel: 'return-air' | 'probe', slow: number, evidence: string): UnitLog => {
  const minutes = Array.from({ length: 840 }, (_, i) => i / 60);
  return {
    ...log(
      minutes.map((hour) => hour - slow),
      { [channel]: minutes.map(bumps) },
    ),
    evidence: evidence as UnitLog['evidence'],
  };
};
const during5 = (hour: number) => hour >= 5 && hour <= 5.5;
/** Air that is warm from five o'clock for half an hour. */
const warmFrom5 = (states: UnitLog['states']) =>
  log(hours, { 'return-air': hours.map((h) => (during5(h) ? 45 : 36)) }, states);

/** For each finding of the catalogue a record that has it. */
const cases: Record<FindingId, () => Finding[]> = {
  'pulps-at-loading-in-band': () => found(items(...course, pulp(36, LOAD))),
  'pulps-at-loading-above-band': () => found(items(...course, pulp(45, LOAD))),
  'pulps-at-loading-below-band': () => found(items(...course, pulp(31, LOAD))),
  'pulps-at-loading-undecided': () => found(items(...course, pulp(38.2, LOAD))),
  'no-pulps-at-loading': () => found(items(...course)),
  'warm-at-loading-told': () => found(items(...course, pulp(45, LOAD), call)),
  'contact-subject-not-recorded': () => found(items(...course, pulp(45, LOAD), unclear)),
  'exception-signed': () => found(items(exceptionAt({ signedBy: [{ party: 'shipper' }] }))),
  'exception-not-signed': () => found(items(exceptionAt({ writtenBy: { party: 'driver' } }))),
  'warm-at-loading-nobody-told': () => found(items(...course, pulp(45, LOAD))),
  'pulps-at-delivery-in-band': () => found(items(...course, pulp(36, DROP))),
  'pulps-at-delivery-above-band': () => found(items(...course, pulp(45, DROP))),
  'pulps-at-delivery-below-band': () => found(items(...course, pulp(31, DROP))),
  'pulps-at-delivery-undecided': () => found(items(...course, pulp(37.8, DROP))),
  'pulps-at-delivery-frozen': () => found(items(...course, pulp(30, DROP))),
  'no-pulps-at-delivery': () => found(items(...course)),
  'warmed-on-the-way': () => found(items(...course, pulp(36, LOAD), pulp(44, DROP))),
  'warm-at-delivery-no-loading-pulps': () => found(items(...course, pulp(44, DROP))),
  'set-point-agrees': () => found(items(said(36, 'display'))),
  'set-point-differs': () => found(items(said(46, 'display'))),
  'set-point-put-right': () =>
    found(items(...course, { ...said(46, 'dispatcher'), time: at(-6) }, said(36, 'display'))),
  'set-point-told-differs': () => found(items(said(46, 'dispatcher'))),
  'set-point-unproven': () => found(items(...course)),
  'set-point-steady': () =>
    found(items(...course), {
      logs: [
        air(
          () => 36,
          () => 36,
        ),
      ],
    }),
  'set-point-changed': () =>
    found(items(...course), {
      logs: [
        air(
          () => 36,
          (h) => (h < 5 ? 36 : 40),
        ),
      ],
    }),
  'no-instruction-on-bill': () => found(items(), { change: line('kale') }),
  'instruction-in-published-range': () => found(items(), { change: line('bananas', '14 °C') }),
  'instruction-where-sources-differ': () => found(items()),
  'instruction-outside-published-range': () => found(items(), { change: line('bananas', '40 °F') }),
  'air-in-band': () => found(items(...course), { logs: [air(() => 36)] }),
  'air-mostly-in-band': () => found(items(...course), { logs: [air((h) => (h > 10 ? 45 : 36))] }),
  'air-out-of-band': () => found(items(...course), { logs: [air(() => 45)] }),
  'excursions-unexplained': () => found(items(...course), { logs: [air((h) => (h > 9 ? 45 : 36))] }),
  'excursions-normal-operation': () => found(items(...course), { logs: [air((h) => (h < 3 ? 45 : 36))] }),
  'excursions-handling': () =>
    found(items(...course), {
      logs: [warmFrom5({ door: hours.map((h) => (during5(h) ? 'open' : 'closed')) })],
    }),
  'excursions-equipment': () =>
    found(items(...course), { logs: [warmFrom5({ power: hours.map((h) => (during5(h) ? 'off' : 'on')) })] }),
  'excursions-instruction': () =>
    found(items(...course), {
      logs: [
        air(
          (h) => (h > 6 && h < 8 ? 46 : 36),
          (h) => (h > 5.5 && h < 7.5 ? 46 : 36),
        ),
      ],
    }),
  'run-mode-as-instructed': () =>
    found(items(...course), { logs: [warmFrom5({ mode: hours.map(() => 'Continuous') })] }),
  'run-mode-differs': () =>
    found(items(...course), { logs: [warmFrom5({ mode: hours.map(() => 'Start/Stop') })] }),
  'log-clock-step': () =>
    found(items(...course), {
      logs: [
        {
          ...air(() => 36),
          clockSteps: [
            {
              ...{ row: 9, from: at5(0), to: at5(-2), seconds: -7200 },
              ...{ uncertaintySeconds: 900, hiddenRows: 7 },
            },
          ],
        },
      ],
    }),
  'log-clock-step-corrected': () =>
    found(items(...course), {
      logs: [{ ...air(() => 36), clockShifts: [{ rows: { from: 9 }, addSeconds: 7200, seq: 4 }] }],
    }),
  'recorder-air': () => found(items(...course), { logs: [air(() => 36), recorder(() => 36)] }),
  'recorders-agree': () => found(items(...course), { logs: [air(() => 36), recorder(() => 37)] }),
  'recorders-disagree': () => found(items(...course), { logs: [air(() => 36), recorder(() => 45)] }),
  'recorder-clock-off': () =>
    found(items(...course), { logs: [fine('return-air', 0, 'e900'), fine('probe', 1, 'e901')] }),
  'log-covers-custody': () => found(items(...course), { logs: [air(() => 36)] }),
  'log-has-gaps': () => found(items(...course), { logs: [air((h) => (h > 5 ? Number.NaN : 36))] }),
  'compartment-not-logged': () =>
    found(items(...course), {
      logs: [{ ...air(() => 36), compartment: 'front' }],
      change: {
        equipment: { trailer: { number: 'T-118', compartments: [{ id: 'front' }, { id: 'rear' }] } },
        lines: ['front', 'rear'].map((id) => ({
          id: `of-${id}`,
          goods: 'kale',
          from: 'load-1',
          to: 'drop-1',
          compartment: id,
        })),
      },
    }),
  'no-unit-log': () => found(items(...course)),
  'unit-off-logged': () => found(items(...course), { logs: [off] }),
  'log-clock-corrected': () => found(items(...course), { logs: [{ ...air(() => 36), addedSeconds: -90 }] }),
  'rounds-kept': () => found(items(...course, look(5), look(8))),
  'rounds-far-apart': () => found(items(...course, look(4))),
  'alarms-seen': () => found(items(...course, look(5, ['low fuel']))),
  'seal-same': () => found(items(...course, seal('A1', 'applied'), seal('A1', 'intact'))),
  'seal-differs': () => found(items(...course, seal('A1', 'applied'), seal('A2', 'intact'))),
  'seal-broken': () => found(items(...course, seal('A1', 'applied'), seal('A1', 'broken'))),
  'seal-not-checked': () => found(items(...course, seal('A1', 'applied'))),
  refused: () => found(items({ kind: 'event', event: 'refused', place: DROP, time: at(12) })),
  'refused-no-written-notice': () =>
    found(items({ kind: 'event', event: 'refused', place: DROP, time: at(12) })),
  'refused-not-inspected': () => found(items({ kind: 'event', event: 'refused', place: DROP, time: at(12) })),
  'air-above-freezing-point': () => found(items(...course), { logs: [air(() => 36)] }),
  'air-below-freezing-point': () => found(items(...course), { logs: [air(() => 31)] }),
  'air-in-chilling-range': () =>
    found(items(...course), { logs: [air(() => 45)], change: line('bananas', '57 °F') }),
  'arrival-supports-origin': () =>
    found(items(...course, pulp(52, LOAD), pulp(49, DROP)), { logs: [air(() => 36)] }),
  'arrival-supports-transit': () =>
    found(items(...course, pulp(36, LOAD), pulp(48, DROP)), {
      logs: [air(() => 50)],
      change: load({
        instruction: { setPoint: '36 °F' },
        halfCoolingHours: { shortest: 2, longest: 6 },
      }),
    }),
  'arrival-does-not-discriminate': () =>
    found(items(...course, pulp(39, LOAD), pulp(38.8, DROP)), { logs: [air(() => 36)] }),
  'arrival-fits-neither': () =>
    found(items(...course, pulp(36, LOAD), pulp(55, DROP)), { logs: [air(() => 36)] }),
  'log-values-left-out': () => found(items(...course), { logs: [air((h) => (h === 6 ? 99 : 36))] }),
  'instruction-below-freezing': () => found(items(), { change: line('celery', '29 °F') }),
  'instruction-near-freezing': () => found(items(), { change: line('lettuce-romaine', '32 °F') }),
  'shocks-over-threshold': () => found(items(...course, jolt(5, 3))),
  'shocks-below-threshold': () => found(items(...course, jolt(2, 3))),
  'shocks-recorded': () => found(items(...course, jolt(5))),
  'shocks-outside-transit': () => found(items(...course, { ...jolt(5, 3), time: at(1) })),
  'hard-braking-recorded': () =>
    found(items(...course, { kind: 'shock', what: 'hard-braking', time: at(5) })),
  'pallets-not-standing': () =>
    found(items(...course, { kind: 'pallets', state: 'leaning', documents: [], place: DROP })),
  'doors-open-between-stops': () =>
    found(items(...course), {
      logs: [
        log(
          hours,
          { 'return-air': hours.map(() => 36) },
          { door: hours.map((h) => (h === 6 ? 'open' : 'closed')) },
        ),
      ],
    }),
  'doors-open-at-stop': () =>
    found(
      items(
        ...course,
        { kind: 'event', event: 'doors-opened', place: { stop: 'drop-0' }, time: at(6) },
        { kind: 'event', event: 'doors-closed', place: { stop: 'drop-0' }, time: at(7) },
      ),
      { change: { stops: threeStops } },
    ),
  'axle-over-limit': () => found(items(...course, weighed), { change: limits('4 t') }),
  'axles-within-limits': () => found(items(...course, weighed), { change: limits('6 t') }),
  'axle-estimate-differs': () =>
    found(
      items(...course, weighed, { ...rows('straight', 1, 4), palletWeight: { value: 900, unit: 'kg' } }),
      {
        change: limits('6 t'),
      },
    ),
  'side-room-not-braced': () => found(items(...course, rows('straight', 1, 4)), { change: trailer({}) }),
  'side-room-braced': () =>
    found(items(...course, rows('straight', 1, 4), { kind: 'bracing', device: 'air-bags', place: LOAD }), {
      change: trailer({}),
    }),
  'rows-hard-to-walls': () => found(items(...course, rows('turned', 1, 4)), { change: trailer({}) }),
  'tall-light-pallets-not-braced': () =>
    found(items(...course, rows('turned', 1, 4)), { change: load({ stackHeight: '84 in', light: true }) }),
  'tall-pallets-not-braced': () =>
    found(items(...course, rows('turned', 1, 4)), { change: load({ stackHeight: '84 in' }) }),
  'iced-by-drains': () =>
    found(items(...course, rows('straight', 1, 2, 'dry'), rows('straight', 3, 4, 'iced')), {
      change: twoLines,
    }),
  'iced-ahead-of-dry': () =>
    found(items(...course, rows('straight', 1, 2, 'iced'), rows('straight', 3, 4, 'dry')), {
      change: twoLines,
    }),
  'iced-away-from-drains': () =>
    found(items(...course, rows('straight', 1, 2, 'dry'), rows('straight', 3, 4, 'iced')), {
      change: { ...twoLines, ...trailer({ drains: 'none' }) },
    }),
  'air-path-blocked': () => found(items(...course, { ...rows('straight', 1, 2), blocks: ['air-return'] })),
  'load-near-ceiling': () =>
    found(items(...course, rows('straight', 1, 2)), {
      change: { ...load({ stackHeight: '96 in' }), ...trailer({ insideHeight: '103 in' }) },
    }),
  'load-near-doors': () =>
    found(items(...course, rows('straight', 1, 13)), { change: trailer({ insideLength: '627 in' }) }),
  'load-does-not-fit': () =>
    found(items(...course, rows('straight', 1, 14)), { change: trailer({ insideLength: '630 in' }) }),
  'pallets-noted-differ': () =>
    found(items(...course, rows('straight', 1, 4)), { change: load({ pallets: 9 }) }),
  'mixed-temperatures': () => found(items(), { change: goods('lettuce-romaine', 'bananas-green') }),
  'mixed-ethylene': () => found(items(), { change: goods('lettuce-romaine', 'apples') }),
  'mixed-moisture': () => found(items(), { change: goods('lettuce-romaine', 'onions-dry') }),
  'accepted-at-delivery': () => found(items(outcome('accepted'))),
  'short-at-delivery': () => found(items(outcome('accepted-with-exceptions', ['shortage'], '24'))),
  'over-at-delivery': () => found(items(outcome('accepted-with-exceptions', ['overage'], '3'))),
  'exception-at-delivery': () => found(items(outcome('accepted-with-exceptions', ['damage']))),
  'evidence-lost': () =>
    found(items(...course), { rule: { needs: { photo: 'drains' }, closes: 'doors-closed' } }),
};

const plainKinds: Record<string, string> = { text: 'string', count: 'number', flag: 'boolean' };

describe('every finding of the catalogue', () => {
  it.each(findingIds)('%s is reached, with the facts that the catalogue lists', (id) => {
    const one = cases[id]().find((finding) => finding.id === id);
    if (one === undefined) throw new Error(`${id} was not found`);
    expect(one.element).toBe(catalogue[id].element);
    const listed: Record<string, string> = catalogue[id].facts;
    for (const name of Object.keys(one.facts)) expect(listed).toHaveProperty(name);
    for (const [name, kind] of Object.entries(listed)) {
      const value = one.facts[name];
      if (value === undefined) {
        expect(kind.endsWith('?')).toBe(true);
        continue;
      }
      const bare = kind.replace('?', '');
      if (typeof value === 'object') expect(value.is).toBe(bare);
      else expect(typeof value).toBe(plainKinds[bare]);
    }
  });
});

describe('who was told of warm pulps before departure', () => {
  const warmWith = (...calls: Call[]) =>
    found(items(...course, pulp(45, LOAD), ...calls)).filter(({ id }) =>
      ['warm-at-loading-told', 'warm-at-loading-nobody-told', 'contact-subject-not-recorded'].includes(id),
    );
  it.each<[string, Parameters<typeof warmWith>, string, Finding['weighs']]>([
    ['nobody', [], 'warm-at-loading-nobody-told', 'hurts'],
    ['the shipper, of the pulps', [call], 'warm-at-loading-told', 'helps'],
    [
      'the shipper, of where to park and the gate code',
      [{ ...call, about: 'where to park and the gate code', subjects: ['other'] }],
      'warm-at-loading-nobody-told',
      'hurts',
    ],
    ['the shipper, of something that nobody put down', [unclear], 'contact-subject-not-recorded', 'open'],
    ['the own dispatcher alone', [{ ...call, with: 'dispatcher' }], 'warm-at-loading-told', 'open'],
    [
      'the dispatcher first and then the shipper',
      [{ ...call, with: 'dispatcher' }, call],
      'warm-at-loading-told',
      'helps',
    ],
    [
      'the shipper, before the first pulp was taken',
      [{ ...call, time: at(0.1) }],
      'warm-at-loading-nobody-told',
      'hurts',
    ],
  ])('%s', (_, calls, id, weighs) => {
    expect(warmWith(...calls).map((one) => [one.id, one.weighs])).toEqual([[id, weighs]]);
  });
});

describe('an instruction and the display of the unit that says the same', () => {
  const paper = { kind: 'document', subject: { is: 'bill-of-lading', sure: 'confirmed' } } as const;
  const tied = (document: string): Partial<DeliveryInput> => ({
    lines: [
      {
        id: 'a',
        goods: 'lettuce-romaine',
        from: 'load-1',
        to: 'drop-1',
        instruction: { setPoint: '36 °F', document },
      },
    ],
  });
  const agrees = (change: Partial<DeliveryInput>) =>
    found(items(said(36, 'display'), paper), { change }).find(({ id }) => id === 'set-point-agrees');
  it.each<[string, Partial<DeliveryInput>, string, Finding['weighs'], string[]]>([
    ['as the carrier typed it', line('lettuce-romaine', '36 °F'), 'as-entered, display', 'open', ['e1']],
    ['compared with the bill on record', tied('e2'), 'bill, display', 'helps', ['e2', 'e1']],
    ['said to be of a paper that is not on record', tied('e9'), 'as-entered, display', 'open', ['e1']],
    ['said to be of a reading, which is no paper', tied('e1'), 'as-entered, display', 'open', ['e1']],
  ])('%s', (_, change, sources, weighs, evidence) => {
    expect(agrees(change)).toMatchObject({ weighs, evidence, facts: { sources } });
  });
});

describe('which way it weighs', () => {
  const weighs = (list: Finding[], id: FindingId) => list.find((one) => one.id === id)?.weighs;
  it.each([
    { what: 'good at both ends', delivery: pulp(36, DROP), way: 'helps' },
    { what: 'good at loading, warm at delivery', delivery: pulp(44, DROP), way: 'hurts' },
    { what: 'good at loading, nothing known of delivery', delivery: undefined, way: 'open' },
  ])('pulps in band at loading: $what: $way', ({ delivery, way }) => {
    const list = found(items(...course, pulp(36, LOAD), ...(delivery === undefined ? [] : [delivery])));
    expect(weighs(list, 'pulps-at-loading-in-band')).toBe(way);
  });

  it('what speaks against the carrier stands beside what speaks for it, heaviest first', () => {
    const list = found(items(...course, pulp(45, LOAD), pulp(46, DROP), said(46, 'display')));
    expect(list.map((one) => one.weighs)).toEqual(expect.arrayContaining(['helps', 'hurts']));
    expect(list.map((one) => one.weight)).toEqual(list.map((one) => one.weight).sort((a, b) => b - a));
  });
});

describe('numbers of findings (worked by hand)', () => {
  it('a refusal names time, reason and how long after arrival', () => {
    const list = found(
      items(...course, { kind: 'event', event: 'refused', place: DROP, time: at(12), note: 'warm' }),
    );
    expect(list.find((one) => one.id === 'refused')?.facts).toMatchObject({
      reason: 'warm',
      sinceArrival: { is: 'duration', seconds: 7200 },
      at: { zone: 'America/Chicago' },
      notices: 0,
    });
  });

  it('air in band: share of the known custody, and coverage of all of it', () => {
    const [one] = found(items(...course), { logs: [air((h) => (h > 6.5 ? Number.NaN : 36))] }).filter(
      (finding) => finding.id === 'air-in-band',
    );
    expect(one?.facts).toMatchObject({ share: { of: 1 }, coverage: { of: 0.5 } });
  });

  it('pulps above the band: how many and how far', () => {
    const [one] = found(items(...course, pulp(45, LOAD), pulp(36, LOAD))).filter(
      (finding) => finding.id === 'pulps-at-loading-above-band',
    );
    expect(one?.facts).toMatchObject({ count: 2, outside: 1, max: { celsius: toCelsius(45, '°F') } });
    // 45 − 38 °F = 7 °F = 3.889 K.
    expect(one?.facts.beyond).toMatchObject({ kelvin: expect.closeTo(3.8889, 4) });
  });
});

import { describe, expect, it } from 'vitest';
import { assess } from '../../../../src/core/assess/assess.js';
import type { DeliveryInput } from '../../../../src/core/model/delivery.js';
import type { StatementTopic } from '../../../../src/core/model/evidence.js';
import { omitUndefined } from '../../../../src/core/model/omit-undefined.js';
import type { GapResult } from '../../../../src/core/model/results.js';
import type { UnitLog } from '../../../../src/core/model/unit-log.js';
import { at, HASH, instantAt, items, log, rulesOf, state } from '../made.js';
import {
  contactWith,
  DROP,
  displayedSetPoint,
  documentOf,
  event,
  LOAD,
  type Piece,
  photo,
  pulp,
  statement as spoken,
  unitCheck,
  unitLog,
} from './complete.js';

type Pieces = readonly Piece[];
interface Given {
  now?: number;
  logs?: UnitLog[];
  change?: Partial<DeliveryInput>;
}

function hold(rule: object, evidence: Pieces, { now = 60, logs = [], change = {} }: Given = {}): GapResult {
  const [gap] = assess({
    state: state(items(...evidence), change),
    logs,
    ruleSet: { ruleSet: rulesOf(rule), sha256: HASH },
    at: instantAt(now),
  }).gaps;
  if (gap === undefined) throw new Error('no gap');
  return gap;
}
const needs = (need: object, more: object = {}) => ({ needs: need, ...more });
const why = (gap: GapResult) => gap.nearly.map((miss) => miss.why);

const ANSWERED = needs(
  { alarms: 'answered', soon: '2 h', after: 'departed', before: 'arrived' },
  { stage: 'in-transit' },
);
const OPENED = event('doors-opened', DROP, 41);
const LEFT = event('departed', LOAD, 3);
const THERE = event('arrived', DROP, 40);

describe('a contact and an exception', () => {
  const told = (...subjects: ContactSubjects): Piece => ({
    ...contactWith('shipper', 2),
    ...omitUndefined({ subjects: subjects.length === 0 ? undefined : subjects }),
  });
  type ContactSubjects = ('pulp-temperatures' | 'delay')[];
  const written = (...parties: ('shipper' | 'driver')[]): Piece => ({
    kind: 'exception',
    time: at(2),
    place: LOAD,
    words: 'pulped 41 F',
    reasons: [],
    documents: [],
    signedBy: parties.map((party) => ({ party })),
  });
  const ABOUT_PULPS = needs({ reading: 'contact', with: 'shipper', subject: ['pulp-temperatures'] });
  const SIGNED = needs({ reading: 'exception', at: 'loading-stop', signedBy: 'shipper' });
  it.each([
    ['about the pulps', ABOUT_PULPS, told('delay', 'pulp-temperatures'), 'met', []],
    ['about something else', ABOUT_PULPS, told('delay'), 'missing', ['other-subject']],
    [
      'whose subject nobody told proves only that it took place',
      ABOUT_PULPS,
      told(),
      'missing',
      ['other-subject'],
    ],
    ['is wanted about nothing in particular', needs({ reading: 'contact' }), told(), 'met', []],
    ['signed by the shipper', SIGNED, written('driver', 'shipper'), 'met', []],
    ['that the driver wrote and signed alone', SIGNED, written('driver'), 'missing', ['not-signed']],
    ['by whoever signed it', needs({ reading: 'exception' }), written(), 'met', []],
  ] as const)('%s', (_, rule, piece, outcome, reasons) => {
    const gap = hold(rule, [LEFT, piece]);
    expect([gap.outcome, why(gap)]).toEqual([outcome, reasons]);
  });
});

describe('particulars and instruments', () => {
  const said = (more: object): Piece => particularAt(2, more);
  const thermometer = (hour: number, more: object): Piece => ({
    kind: 'instrument',
    time: at(hour),
    place: LOAD,
    name: hour > 10 ? 'p-7 ' : 'P-7',
    type: 'thermometer',
    documents: [],
    ...more,
  });
  const particularAt = (hour: number, more: object): Piece => ({
    kind: 'particular',
    time: at(hour),
    place: LOAD,
    of: 'counted-by',
    documents: [],
    ...more,
  });
  const BOTH = needs({ instrument: 'thermometer', has: ['iceBefore', 'iceAfter'] });
  const ICE = { value: 32.4, unit: '°F' as const };
  it.each([
    ['who counted', needs({ particular: 'counted-by' }), [said({ who: { party: 'driver' } })], 'met', []],
    [
      'who counted, by another than is asked for',
      needs({ particular: 'counted-by', who: 'shipper' }),
      [said({ who: { party: 'driver' } })],
      'missing',
      ['wrong-source'],
    ],
    [
      'something else',
      needs({ particular: ['defrost'] }),
      [said({ who: { party: 'driver' } })],
      'missing',
      [],
    ],
    [
      'a count for each stop, at one of them',
      needs({ particular: 'count', per: 'stop' }),
      [said({ of: 'count', quantity: { amount: '480', unit: 'cartons' } })],
      'short',
      [],
    ],
    [
      'both checks of one thermometer, at two times',
      BOTH,
      [thermometer(2, { iceBefore: ICE }), thermometer(40, { iceAfter: ICE })],
      'met',
      [],
    ],
    ['one check of the two', BOTH, [thermometer(2, { iceBefore: ICE })], 'missing', ['incomplete']],
    [
      'a recorder of the shipper, where it is the carrier’s',
      needs({ instrument: 'recorder', owner: 'shipper' }),
      [thermometer(2, { type: 'recorder', owner: { party: 'carrier' } })],
      'missing',
      ['wrong-source'],
    ],
  ] as const)('%s', (_, rule, pieces, outcome, reasons) => {
    const gap = hold(rule, [LEFT, THERE, ...pieces]);
    expect([gap.outcome, why(gap)]).toEqual([outcome, reasons]);
  });

  it('a stop with a reason is explained', () => {
    const rule = needs({ delays: 'explained', over: '2 h' }, { stage: 'in-transit' });
    const stopped = (reason?: 'hours-of-service'): Piece => ({
      ...event('stopped', LOAD, 10),
      place: {},
      ...omitUndefined({ reason }),
    });
    const outcomes = [stopped(), stopped('hours-of-service')].map(
      (one) => hold(rule, [LEFT, one, { ...event('resumed', LOAD, 20), place: {} }, THERE]).outcome,
    );
    expect(outcomes).toEqual(['short', 'met']);
  });
});

describe('a statement that names its topic', () => {
  const said = (hour: number, about?: StatementTopic): Piece => ({
    ...spoken(hour),
    ...omitUndefined({ about }),
  });
  const ACCOUNT = needs({ reading: 'statement', about: ['loading', 'dock-access'], after: 'arrived' });
  const ALARM = [unitLog({ alarm: (hour) => (hour >= 10 && hour <= 11 ? 'A63' : 'none') })];
  it.each([
    ['of one of the topics asked for', ACCOUNT, [THERE, said(41, 'dock-access')], [], 'met'],
    ['of another', ACCOUNT, [THERE, said(41, 'rejection')], [], 'missing'],
    ['that names none may be about anything', ACCOUNT, [THERE, said(41)], [], 'met'],
    ['of anything, where none is asked for', needs({ reading: 'statement' }), [said(41, 'seal')], [], 'met'],
    ['of the unit answers an alarm', ANSWERED, [LEFT, THERE, said(11, 'unit')], ALARM, 'met'],
    ['of the trailer does not', ANSWERED, [LEFT, THERE, said(11, 'trailer')], ALARM, 'short'],
  ] as const)('%s', (_, rule, evidence, logs, outcome) =>
    expect(hold(rule, evidence, { logs: [...logs] }).outcome).toBe(outcome),
  );

  it('stands in only for what it is about', () => {
    const rule = needs(
      { photo: 'seal' },
      { closes: 'doors-closed', substitutes: [{ statement: 'person', about: ['seal', 'delivery'] }] },
    );
    const standIns = (about: StatementTopic) => hold(rule, [LEFT, said(2, about)]).substitutes;
    expect(standIns('seal')).toMatchObject([{ evidence: ['e2'] }]);
    expect(standIns('loading')).toEqual([]);
  });
});

describe('a time next to a moment', () => {
  const AFTER = needs(
    { photo: 'load-at-opening', within: '30 min after doors-opened' },
    { stage: 'arrival' },
  );
  const BEFORE = needs({ photo: 'seal', within: '1 h before doors-opened' }, { stage: 'arrival' });
  it.each([
    ['in it', AFTER, 'load-at-opening', 41.4, 'met', []],
    ['too late', AFTER, 'load-at-opening', 41.6, 'missing', ['too-late']],
    ['too early', AFTER, 'load-at-opening', 40.9, 'missing', ['too-early']],
    ['in it, before', BEFORE, 'seal', 40.5, 'met', []],
    ['too early, before', BEFORE, 'seal', 39.5, 'missing', ['too-early']],
  ] as const)('%s', (_, rule, subject, hour, outcome, misses) => {
    const gap = hold(rule, [OPENED, photo(subject, DROP, hour)]);
    expect([gap.outcome, why(gap)]).toEqual([outcome, misses]);
  });

  it('has an open far end when the moment itself is not recorded', () => {
    const unloading = event('unloading-began', DROP, 50);
    expect(hold(BEFORE, [unloading, photo('seal', DROP, 40)]).outcome).toBe('met');
  });

  it('closes a rule some time after a moment, and says when that is', () => {
    const rule = needs({ photo: 'damage' }, { stage: 'rejection', closes: '24 h after refused' });
    const refused = event('refused', DROP, 42);
    expect(hold(rule, [refused]).closable).toEqual({
      is: 'until',
      moment: 'refused',
      seconds: 86_400,
      stop: 'drop-1',
      at: instantAt(66),
    });
    expect(hold(rule, [refused], { now: 66 }).closable.is).toBe('lost');
    expect(hold(rule, [THERE]).closable).toEqual({
      is: 'until',
      moment: 'refused',
      seconds: 86_400,
      stop: 'drop-1',
    });
  });

  it('does not take for there what is of a later time than is asked about', () => {
    const rule = needs({ photo: 'drains' });
    const gap = hold(rule, [photo('drains', LOAD, 5)], { now: 4 });
    expect([gap.outcome, why(gap)]).toEqual(['missing', ['too-late']]);
  });
});

describe('quality', () => {
  const flagged = (is: 'blurred' | 'no-capture-time'): Piece => ({
    kind: 'photo',
    subject: { is: 'seal', sure: 'confirmed' },
    flags: [{ is, detail: '' }],
    time: at(1),
  });
  it.each([
    ['blurred', needs({ photo: 'seal', without: ['blurred', 'dark'] }), flagged('blurred'), 'blurred'],
    [
      'no time in the file',
      needs({ photo: 'seal', without: ['no-capture-time'] }),
      flagged('no-capture-time'),
      'no-capture-time',
    ],
    [
      'only proposed',
      needs({ photo: 'seal', confirmed: true }),
      { kind: 'photo', subject: { is: 'seal', sure: 'proposed' }, time: at(1) } as const,
      'only-proposed',
    ],
    ['no date', needs({ document: 'claim-letter', dated: true }), documentOf('claim-letter'), 'no-time'],
  ])('%s disqualifies where the rule says so', (_, rule, piece, reason) => {
    const gap = hold(rule, [piece]);
    expect([gap.outcome, why(gap)]).toEqual(['missing', [reason]]);
  });

  it('a blurred picture counts where the rule does not mind, with a note', () => {
    const gap = hold(needs({ photo: 'seal' }), [flagged('blurred')]);
    expect([gap.outcome, gap.notes.map((note) => note.is)]).toEqual(['met', ['hard-to-read']]);
  });
});

describe('alarms', () => {
  const alarm = [unitLog({ alarm: (hour) => (hour >= 10 && hour <= 11 ? 'A63' : 'none') })];
  it.each<[string, Pieces, UnitLog[], GapResult['outcome'], string[]]>([
    ['nobody knows', [LEFT, THERE], [], 'missing', ['alarms-not-known']],
    [
      'a log without the column does not know',
      [LEFT, THERE],
      [log([4, 5], { 'return-air': [36, 36] })],
      'missing',
      ['alarms-not-known'],
    ],
    ['none', [LEFT, THERE], [unitLog()], 'met', []],
    ['nobody acted', [LEFT, THERE, unitCheck(5)], alarm, 'short', ['alarm-unanswered']],
    ['a call soon after', [LEFT, THERE, contactWith('dispatcher', 11)], alarm, 'met', []],
    ['a call much later', [LEFT, THERE, contactWith('dispatcher', 20)], alarm, 'short', ['alarm-unanswered']],
    [
      'noted at a look and called',
      [LEFT, THERE, unitCheck(8, { alarms: ['low fuel'] }), contactWith('dispatcher', 9)],
      [],
      'met',
      [],
    ],
    [
      'noted at a look',
      [LEFT, THERE, unitCheck(8, { alarms: ['low fuel'] })],
      [],
      'short',
      ['alarm-unanswered'],
    ],
    ['before leaving', [event('departed', LOAD, 12), THERE], alarm, 'met', []],
  ])('%s', (_, evidence, logs, outcome, lacks) => {
    const gap = hold(ANSWERED, evidence, { logs });
    expect([gap.outcome, gap.lacking.map((one) => one.is)]).toEqual([outcome, lacks]);
  });

  it('one that has just begun is not yet unanswered', () => {
    expect(hold(ANSWERED, [LEFT], { logs: alarm, now: 10.5 }).outcome).toBe('met');
  });
});

describe('delays', () => {
  const EXPLAINED = needs({ delays: 'explained', over: '2 h' }, { stage: 'in-transit' });
  const stop = (hour: number, note?: string) =>
    ({
      kind: 'event',
      event: 'stopped',
      time: at(hour),
      ...omitUndefined({ note: note ? note : undefined }),
    }) as const;
  const on = (hour: number) => ({ kind: 'event', event: 'resumed', time: at(hour) }) as const;
  const planned: Partial<DeliveryInput> = {
    stops: [
      { id: 'load-1', does: 'load', place: 'Cooler A', zone: 'America/Phoenix' },
      // 40 hours after the day's start is 22:00 on the 15th in Chicago.
      {
        id: 'drop-1',
        does: 'unload',
        place: 'Warehouse B',
        zone: 'America/Chicago',
        planned: '2026-07-15T18:00',
      },
    ],
  };
  it.each<[string, Pieces, Partial<DeliveryInput>, GapResult['outcome'], string[]]>([
    ['none', [LEFT, THERE], {}, 'met', []],
    ['a short stop', [LEFT, stop(10), on(11), THERE], {}, 'met', []],
    ['a long stop', [LEFT, stop(10), on(20), THERE], {}, 'short', ['stop-unexplained']],
    ['a long stop with a note', [LEFT, stop(10, 'rest'), on(20), THERE], {}, 'met', []],
    ['a long stop and a call', [LEFT, stop(10), contactWith('dispatcher', 11), on(20), THERE], {}, 'met', []],
    ['four hours late', [LEFT, THERE], planned, 'short', ['late-unexplained']],
    [
      'four hours late, the receiver was told',
      [LEFT, contactWith('receiver', 37), THERE],
      planned,
      'met',
      [],
    ],
    ['nobody knows when it left', [], {}, 'missing', ['way-not-known']],
  ])('%s', (_, evidence, change, outcome, lacks) => {
    const gap = hold(EXPLAINED, evidence, { change });
    expect([gap.outcome, gap.lacking.map((one) => one.is)]).toEqual([outcome, lacks]);
  });
});

describe('readings against each other and against the bill', () => {
  const AIR: Piece = { kind: 'round', alarms: [], place: LOAD, time: at(1) };
  const box = (value: number): Piece => ({
    kind: 'round',
    alarms: [],
    place: LOAD,
    time: at(1),
    boxAir: { value, unit: '°F' },
  });
  const line = (run?: 'continuous' | 'start-stop') => ({
    id: 'romaine',
    goods: 'lettuce-romaine',
    from: 'load-1',
    to: 'drop-1',
    instruction: { setPoint: '36 °F', ...omitUndefined({ run }) },
  });
  const PULPS = needs(
    { agreement: 'pulp', between: ['receiver', 'driver'], at: 'unloading-stop', tolerance: '3 °F' },
    { stage: 'arrival' },
  );
  const RUN = { reading: 'set-point', shownBy: 'display', run: 'as-on-bill' };
  it.each<[string, object, Pieces, Partial<DeliveryInput>, GapResult['outcome']]>([
    ['box air near the bill', needs({ reading: 'round', boxAirWithin: '5 °F' }), [box(40)], {}, 'met'],
    ['box air far from it', needs({ reading: 'round', boxAirWithin: '5 °F' }), [box(48)], {}, 'contradicted'],
    ['a look without box air', needs({ reading: 'round', boxAirWithin: '5 °F' }), [AIR], {}, 'missing'],
    [
      'two hands agree',
      PULPS,
      [pulp('romaine', DROP, 41, 'nose', 36), pulp('romaine', DROP, 41, 'nose', 38, 'receiver')],
      {},
      'met',
    ],
    [
      'two hands differ',
      PULPS,
      [pulp('romaine', DROP, 41, 'nose', 36), pulp('romaine', DROP, 41, 'nose', 46, 'receiver')],
      {},
      'contradicted',
    ],
    ['one hand', PULPS, [pulp('romaine', DROP, 41, 'nose', 36)], {}, 'short'],
    ['no hand', PULPS, [], {}, 'missing'],
    [
      'run as the bill asks',
      needs(RUN),
      [displayedSetPoint(2, 36, 'start-stop')],
      { lines: [line('start-stop')] },
      'met',
    ],
    [
      'run otherwise',
      needs(RUN),
      [displayedSetPoint(2, 36, 'start-stop')],
      { lines: [line('continuous')] },
      'contradicted',
    ],
    [
      'a silent bill: any mode',
      needs(RUN),
      [displayedSetPoint(2, 36, 'start-stop')],
      { lines: [line()] },
      'met',
    ],
    [
      'a silent bill: the usual mode',
      needs({ ...RUN, runIfSilent: 'continuous' }),
      [displayedSetPoint(2, 36, 'start-stop')],
      { lines: [line()] },
      'contradicted',
    ],
  ])('%s', (_, rule, evidence, change, outcome) => {
    const gap = hold(rule, evidence, { change });
    expect(gap.outcome).toBe(outcome);
    expect(gap.against.length > 0).toBe(outcome === 'contradicted');
  });

  it('air in the log is held against the bill at the end of the window', () => {
    const rule = needs({ log: 'unit-log', from: 'arrived', to: 'doors-opened', airWithin: '5 °F' });
    const course: Pieces = [event('arrived', LOAD, 0), event('doors-opened', LOAD, 2)];
    const cooling = (end: number) => [log([0, 0.5, 1, 1.5, 2], { 'return-air': [80, 70, 60, 50, end] })];
    expect(hold(rule, course, { logs: cooling(37) }).outcome).toBe('met');
    expect(hold(rule, course, { logs: cooling(45) }).outcome).toBe('contradicted');
  });
});

describe('for which deliveries', () => {
  const stops = (loads: number) => [
    ...Array.from({ length: loads }, (_, i) => ({
      id: `load-${i + 1}`,
      does: 'load' as const,
      place: `Cooler ${i + 1}`,
      zone: 'America/Phoenix',
    })),
    { id: 'drop-1', does: 'unload' as const, place: 'Warehouse B', zone: 'America/Chicago' },
  ];
  const line = (id: string, more: object = {}) => ({ id, goods: id, from: 'load-1', to: 'drop-1', ...more });
  it.each<[string, object, Partial<DeliveryInput>, boolean]>([
    ['two loading stops', { loadingStops: { atLeast: 2 } }, { stops: stops(2) }, true],
    ['one loading stop', { loadingStops: { atLeast: 2 } }, {}, false],
    ['at most one', { unloadingStops: { atMost: 1 } }, {}, true],
    ['goods by another of their names', { goods: ['romaine'] }, { lines: [line('lettuce-romaine')] }, true],
    ['other goods', { goods: ['lettuce-romaine'] }, { lines: [line('kale')] }, false],
    [
      'frozen',
      { setPointAtMost: '10 °F' },
      { lines: [line('peas', { instruction: { setPoint: '0 °F' } })] },
      true,
    ],
    ['not frozen', { setPointAtMost: '10 °F' }, {}, false],
    ['tall', { stackHeightAtLeast: '72 in' }, { lines: [line('kale', { stackHeight: '2 m' })] }, true],
    ['a silent bill', { run: 'silent' }, { lines: [line('kale')] }, true],
    ['any of', { any: [{ iced: true }, { goods: ['kale'] }] }, { lines: [line('kale')] }, true],
    ['none of', { none: [{ goods: ['kale'] }] }, { lines: [line('kale')] }, false],
    [
      'conditions hold together for one line, not one each',
      { iced: true, goods: ['kale'] },
      { lines: [line('kale'), line('broccoli', { iced: true })] },
      false,
    ],
  ])('%s', (_, applies, change, does) => {
    const gap = hold(needs({ photo: 'seal' }, { applies }), [], { change });
    expect(gap.outcome !== 'does-not-apply').toBe(does);
  });

  it('only the lines chosen are counted', () => {
    const rule = needs({ reading: 'pulp', per: 'line' }, { applies: { iced: true } });
    const change = { lines: [line('kale'), line('broccoli', { iced: true })] };
    expect(hold(rule, [pulp('broccoli', LOAD, 1, 'nose')], { change }).outcome).toBe('met');
    expect(hold(rule, [pulp('kale', LOAD, 1, 'nose')], { change }).lacking).toEqual([
      { is: 'none', facts: { thing: 'pulp', need: 1 }, line: 'broccoli' },
    ]);
  });

  describe('with several loading stops, each on its own', () => {
    const change = { stops: stops(2), lines: [line('kale'), line('chard', { from: 'load-2' })] };
    const SECOND = { stop: 'load-2' };
    const rule = needs(
      {
        any: [
          { photo: 'bracing', at: 'loading-stop' },
          { reading: 'bracing', at: 'loading-stop' },
        ],
      },
      { each: 'loading-stop', opens: 'loading-began', closes: 'doors-closed' },
    );
    const bars = { kind: 'bracing', device: 'load-bars', place: SECOND, time: at(9) } as const;
    const first: Pieces = [event('loading-began', LOAD, 1), event('doors-closed', LOAD, 2)];
    const second: Pieces = [event('loading-began', SECOND, 8)];

    it('another way at each stop will do', () => {
      const gap = hold(rule, [...first, ...second, photo('bracing', LOAD, 1.5), bars], { change });
      expect(gap.outcome).toBe('met');
    });
    it('what was not had at the first stop is lost there, and can still be had at the second', () => {
      const gap = hold(rule, [...first, ...second], { change });
      expect(gap.closable).toEqual({ is: 'until', moment: 'doors-closed', stop: 'load-2' });
      expect(gap.parts?.map((part) => [part.stop, part.closable.is])).toEqual([
        ['load-1', 'lost'],
        ['load-2', 'until'],
      ]);
    });
    it('a stop that was not reached is no gap yet', () => {
      const gap = hold(rule, [...first, photo('bracing', LOAD, 1.5)], { change });
      expect([gap.outcome, gap.counted]).toEqual(['not-yet-due', ['e3']]);
    });
    it('evidence of one stop does not serve the other', () => {
      const gap = hold(rule, [...first, ...second, photo('bracing', LOAD, 1.5)], { change });
      expect([gap.outcome, gap.lacking.map((one) => one.stop)]).toEqual(['short', ['load-2']]);
    });
  });
});

import type { Evidence, SubjectName } from '../../../../src/core/model/evidence.js';
import { omitUndefined } from '../../../../src/core/model/omit-undefined.js';
import type { EvidenceItem } from '../../../../src/core/model/state.js';
import type { UnitLog } from '../../../../src/core/model/unit-log.js';
import { at, items, log } from '../made.js';

/**
 * An invented delivery with everything that the produce set asks for, from the empty trailer to the answer to a
 * claim. Hours count from the day's start; each piece has a tag, so that a test can leave it out or put another in.
 */
export interface At {
  stop: string;
}
export const LOAD: At = { stop: 'load-1' };
export const DROP: At = { stop: 'drop-1' };
export const TIMES = {
  arrived: 0,
  opened: 1,
  began: 1.5,
  ended: 2.5,
  closed: 3,
  departed: 3.5,
  there: 40,
  openedThere: 41,
  unloading: 41.6,
  refused: 42,
  claim: 100,
  end: 400,
} as const;
export const CHANGE = {
  lines: [
    {
      id: 'romaine',
      goods: 'lettuce-romaine',
      from: 'load-1',
      to: 'drop-1',
      stackHeight: '84 in',
      instruction: { setPoint: '36 °F', tolerance: '2 °F', run: 'continuous' as const },
    },
    {
      id: 'broccoli',
      goods: 'broccoli',
      from: 'load-1',
      to: 'drop-1',
      iced: true,
      instruction: { setPoint: '36 °F', tolerance: '2 °F', run: 'continuous' as const },
    },
  ],
};

export type Piece = Parameters<typeof items>[number];
export type TaggedPiece = readonly [tag: string, piece: Piece];

const F = (value: number) => ({ value, unit: '°F' as const });
export const photo = (is: SubjectName, place: At, hour: number, line?: string): Piece => ({
  kind: 'photo',
  subject: { is, sure: 'confirmed' },
  place,
  time: at(hour),
  ...omitUndefined({ line }),
});
export const documentOf = (is: SubjectName, hour?: number): Piece => ({
  kind: 'document',
  subject: { is, sure: 'confirmed' },
  ...omitUndefined({ time: hour === undefined ? undefined : at(hour) }),
});
export const event = (
  name: Extract<Evidence, { kind: 'event' }>['event'],
  place: At,
  hour: number,
): Piece => ({ kind: 'event', event: name, place, time: at(hour) });
export const pulp = (
  line: string,
  place: At,
  hour: number,
  position: 'nose' | 'middle' | 'tail',
  value = 36,
  from: 'driver' | 'receiver' = 'driver',
): Piece => ({
  kind: 'pulp',
  temperature: F(value),
  from,
  line,
  place: { ...place, position },
  time: at(hour),
});
export const unitCheck = (
  hour: number,
  more: { fuel?: number; boxAir?: number; alarms?: string[]; at?: At } = {},
): Piece => ({
  kind: 'round',
  fuel: more.fuel ?? 0.8,
  boxAir: F(more.boxAir ?? 36),
  alarms: more.alarms ?? [],
  time: at(hour),
  ...omitUndefined({ place: more.at }),
});
export const contactWith = (who: Extract<Evidence, { kind: 'contact' }>['with'], hour: number): Piece => ({
  kind: 'contact',
  with: who,
  how: 'call',
  about: 'the load',
  time: at(hour),
});
export const statement = (hour: number, place?: At): Piece => ({
  kind: 'statement',
  text: 'What I saw.',
  time: at(hour),
  ...omitUndefined({ place }),
});
export const displayedSetPoint = (
  hour: number,
  value = 36,
  run: 'continuous' | 'start-stop' = 'continuous',
): Piece => ({
  kind: 'set-point',
  temperature: F(value),
  shownBy: 'display',
  run,
  place: LOAD,
  time: at(hour),
});
export const seal = (number: string, state: 'applied' | 'intact' | 'broken', hour: number): Piece => ({
  kind: 'seal',
  number,
  state,
  place: state === 'applied' ? LOAD : DROP,
  time: at(hour),
});

const POSITIONS = ['nose', 'middle', 'tail'] as const;
const LINES = ['romaine', 'broccoli'] as const;

const stated = (
  of: Extract<Evidence, { kind: 'particular' }>['of'],
  hour: number,
  more: object = { words: 'as stated' },
  place: At = LOAD,
): Piece => ({ kind: 'particular', of, place, time: at(hour), documents: [], ...more });
const instrument = (
  type: Extract<Evidence, { kind: 'instrument' }>['type'],
  hour: number,
  more: object,
  place: At = LOAD,
): Piece => ({ kind: 'instrument', type, name: `${type} 1`, place, time: at(hour), documents: [], ...more });
const COUNTED = { quantity: { amount: '960', unit: 'cartons' } };

const complete: readonly TaggedPiece[] = [
  ['previous-load', stated('previous-load', -1)],
  ['previous-load-more', stated('previous-load', -1)],
  ['previous-load-more', stated('previous-load', -1)],
  ['calibration', documentOf('calibration-certificate')],
  ['ice-before', instrument('thermometer', 0.3, { serial: '7', iceBefore: F(32) })],
  ['ice-after', instrument('thermometer', 41.2, { iceAfter: F(32) }, DROP)],
  ['recorder', instrument('recorder', 0.9, { serial: '77', where: 'pallet 3' })],
  ['recorder-download', documentOf('recorder-download')],
  ['controller', instrument('controller', 0.9, { serial: '9', software: '4.2' })],
  ['native', documentOf('native-download')],
  ['defrost', stated('defrost', 0.9)],
  ['vent', stated('fresh-air-vent', 0.9)],
  ['loaded-by', stated('loaded-by', 2.6, { who: { party: 'shipper' } })],
  ['counted-by', stated('counted-by', 2.6, { who: { party: 'driver' } })],
  ['count', stated('count', 2.6, COUNTED)],
  ['count-there', stated('count', 41.8, COUNTED, DROP)],
  ['harvest', documentOf('harvest-record')],
  ['origin', documentOf('origin-certificate')],
  ['rested', { ...event('stopped', LOAD, 12), place: {} }],
  ['rested', { ...event('resumed', LOAD, 12.5), place: {} }],
  ['duty', documentOf('duty-record')],
  ['instruction', documentOf('disposal-instruction')],
  ['market', documentOf('market-report')],
  ['payment', documentOf('proof-of-payment')],
  ['trailer-inside', photo('trailer-inside', LOAD, 0.5)],
  ['trailer-inside-more', photo('trailer-inside', LOAD, 0.5)],
  ['trailer-inside-more', photo('trailer-inside', LOAD, 0.5)],
  ['statement-before', statement(0.6, LOAD)],
  ['drains', photo('drains', LOAD, 0.5)],
  ['air-chute', photo('air-chute', LOAD, 0.5)],
  ['pre-trip', documentOf('pre-trip-report')],
  ['unit-check-before', unitCheck(0.7, { at: LOAD })],
  ['display-before', photo('unit-display', LOAD, 0.8)],
  ['ice-check', photo('thermometer-in-ice', LOAD, 0.2)],
  ['fuel-gauge', photo('fuel-gauge', LOAD, 0.8)],
  ['arrived', event('arrived', LOAD, TIMES.arrived)],
  ['opened', event('doors-opened', LOAD, TIMES.opened)],
  ['began', event('loading-began', LOAD, TIMES.began)],
  ['ended', event('loading-ended', LOAD, TIMES.ended)],
  ['closed', event('doors-closed', LOAD, TIMES.closed)],
  ['departed', event('departed', LOAD, TIMES.departed)],
  ['account', statement(4)],
  ...LINES.flatMap((line) => [
    ...POSITIONS.map(
      (position): TaggedPiece => [`pulp-${line}-${position}`, pulp(line, LOAD, 1.2, position)],
    ),
    [`pulp-display-${line}`, photo('pulp-display', LOAD, 1.2, line)] as const,
    [`dock-${line}`, photo('pallets-on-dock', LOAD, 1.2, line)] as const,
    [`tag-${line}`, photo('pallet-tag', LOAD, 1.2, line)] as const,
  ]),
  ['bill', documentOf('bill-of-lading')],
  ['display', displayedSetPoint(3.2)],
  ['display-photo', photo('unit-display', LOAD, 3.2)],
  ['contact-shipper', contactWith('shipper', 2)],
  ['load-pattern', photo('load-pattern', LOAD, 2.8)],
  ['air-path', photo('air-path', LOAD, 2.8)],
  ['bracing-photo', photo('bracing', LOAD, 2.8)],
  ['bracing', { kind: 'bracing', device: 'air-bags', place: LOAD, time: at(2.8) }],
  ['seal', seal('AB 123', 'applied', 3.1)],
  ['seal-photo', photo('seal', LOAD, 3.1)],
  ...[6, 10, 14, 18, 22, 26, 30, 34, 38].map((hour): TaggedPiece => ['unit-checks', unitCheck(hour)]),
  ['there', event('arrived', DROP, TIMES.there)],
  ['notice', event('notice-of-arrival', DROP, 40.1)],
  ['seal-there', seal('AB-123', 'intact', 40.2)],
  ['seal-photo-there', photo('seal', DROP, 40.2)],
  ['display-there', photo('unit-display', DROP, 40.3)],
  ['opened-there', event('doors-opened', DROP, TIMES.openedThere)],
  ['load-at-opening', photo('load-at-opening', DROP, 41.1)],
  ...LINES.flatMap((line) => [
    ...POSITIONS.map(
      (position): TaggedPiece => [`pulp-there-${line}-${position}`, pulp(line, DROP, 41.5, position)],
    ),
    [`receiver-${line}`, pulp(line, DROP, 41.5, 'tail', 37, 'receiver')] as const,
  ]),
  ['pulp-display-there', photo('pulp-display', DROP, 41.5)],
  ['unloading', event('unloading-began', DROP, TIMES.unloading)],
  ['pod', documentOf('proof-of-delivery')],
  ['refused', event('refused', DROP, TIMES.refused)],
  ['rejection', documentOf('rejection-notice')],
  ['contact-shipper-refused', contactWith('shipper', 42.2)],
  ['contact-insurer', contactWith('insurer', 42.3)],
  ['damage', photo('damage', DROP, 42.5)],
  ['damage-more', photo('damage', DROP, 42.5)],
  ['damage-more', photo('damage', DROP, 42.5)],
  ['inspection', event('inspection-requested', DROP, 43)],
  ['certificate', documentOf('inspection-certificate')],
  ['unit-check-refused', unitCheck(44)],
  ['sale', documentOf('sale-account', 60)],
  ['claim', documentOf('claim-letter', TIMES.claim)],
  ['invoice', documentOf('invoice', TIMES.claim)],
  ['contact-insurer-claim', contactWith('insurer', 101)],
  ['acknowledged', documentOf('claim-acknowledgement', 110)],
  ['answered', documentOf('claim-answer', 150)],
];

/** The delivery's evidence without some pieces (by tag, or by the start of it with `*`), and with others. */
export function evidenceWith(drop: readonly string[] = [], add: readonly Piece[] = []): EvidenceItem[] {
  const dropped = (tag: string) =>
    drop.some((one) => (one.endsWith('*') ? tag.startsWith(one.slice(0, -1)) : one === tag));
  return items(...complete.filter(([tag]) => !dropped(tag)).map(([, piece]) => piece), ...add);
}

const QUARTERS = Array.from({ length: 4 * 56 }, (_, i) => -10 + i / 4);
/** A log of quarter hours from the night before to after the refusal; a change is made from its hour on. */
export function unitLog(
  change: {
    air?: (hour: number) => number;
    setPoint?: (hour: number) => number;
    alarm?: (hour: number) => string;
    from?: number;
  } = {},
): UnitLog {
  const hours = QUARTERS.filter((hour) => hour >= (change.from ?? -10));
  return log(
    hours,
    {
      'return-air': hours.map(change.air ?? (() => 36)),
      'set-point': hours.map(change.setPoint ?? (() => 36)),
    },
    { alarm: hours.map(change.alarm ?? (() => '')) },
  );
}

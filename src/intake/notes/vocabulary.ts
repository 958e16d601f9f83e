import { runMode } from '../../core/model/delivery.js';
import type { ReadingKind } from '../../core/model/evidence.js';
import {
  bracing,
  contact,
  contactSubject,
  eventName,
  instrumentType,
  outcomeReason,
  palletState,
  particularSubject,
  position,
  readingFrom,
  rowPattern,
  seal,
  setPointSource,
  shockAxis,
  shockEvent,
  stopReason,
} from '../../core/model/evidence.js';

/** Words for the kind of a note, besides the kind's own name. */
export const KIND_WORDS: Readonly<Record<string, ReadingKind>> = {
  pulp: 'pulp',
  pulped: 'pulp',
  'set-point': 'set-point',
  setpoint: 'set-point',
  round: 'round',
  check: 'round',
  seal: 'seal',
  bracing: 'bracing',
  braced: 'bracing',
  pattern: 'pattern',
  event: 'event',
  scale: 'scale',
  weighed: 'scale',
  shock: 'shock',
  'hard-braking': 'shock',
  'hard-acceleration': 'shock',
  'hard-turn': 'shock',
  refusal: 'outcome',
  acceptance: 'outcome',
  accepted: 'outcome',
  exception: 'exception',
  instrument: 'instrument',
  thermometer: 'instrument',
  recorder: 'instrument',
  sensor: 'instrument',
  controller: 'instrument',
  ...Object.fromEntries(particularSubject.options.map((subject) => [subject, 'particular'] as const)),
  excepted: 'exception',
  inspection: 'inspection',
  certificate: 'inspection',
  contact: 'contact',
  told: 'contact',
  called: 'contact',
  call: 'contact',
  statement: 'statement',
};

/** Words of a closed list, and the option of `dossier record` that they fill; `word` is the main one. */
export interface ListedWord {
  field: string;
  options: readonly string[];
}

/** Word lists of each kind, in the order in which they are tried. */
export const LISTED_WORDS: Readonly<Record<ReadingKind, readonly ListedWord[]>> = {
  pulp: [{ field: 'from', options: readingFrom.options }],
  'set-point': [
    { field: 'shownBy', options: setPointSource.options },
    { field: 'run', options: runMode.options },
  ],
  round: [],
  seal: [{ field: 'state', options: seal.shape.state.options }],
  bracing: [{ field: 'word', options: bracing.shape.device.options }],
  pattern: [{ field: 'word', options: rowPattern.options }],
  scale: [],
  shock: [
    { field: 'what', options: shockEvent.options },
    { field: 'axis', options: shockAxis.options },
  ],
  pallets: [{ field: 'word', options: palletState.options }],
  event: [
    { field: 'word', options: eventName.options },
    { field: 'reason', options: stopReason.options.filter((reason) => reason !== 'other') },
  ],
  outcome: [{ field: 'reason', options: outcomeReason.options }],
  inspection: [],
  instrument: [{ field: 'type', options: instrumentType.options }],
  particular: [{ field: 'word', options: particularSubject.options }],
  exception: [{ field: 'reason', options: outcomeReason.options }],
  contact: [
    { field: 'word', options: contact.shape.with.options },
    { field: 'how', options: contact.shape.how.options },
    { field: 'subject', options: contactSubject.options.filter((subject) => subject !== 'other') },
  ],
  statement: [],
};

/** The field for free text. */
export const FREE_FIELD: Readonly<Record<ReadingKind, string>> = {
  pulp: 'caption',
  'set-point': 'caption',
  round: 'caption',
  seal: 'caption',
  bracing: 'note',
  pattern: 'note',
  scale: 'caption',
  shock: 'caption',
  pallets: 'note',
  event: 'note',
  outcome: 'words',
  inspection: 'defect',
  instrument: 'where',
  particular: 'words',
  exception: 'words',
  contact: 'about',
  statement: 'word',
};

/** Fields that a note may say several values of. */
export const SEVERAL: ReadonlySet<string> = new Set(['reason', 'subject', 'signedBy', 'alarm', 'photo']);

/** How pallets were found: a kind of note where no other word says one. */
export const PALLET_STATES: ReadonlySet<string> = new Set(palletState.options);
export const EVENTS: ReadonlySet<string> = new Set(eventName.options);
export const POSITIONS: ReadonlySet<string> = new Set(position.options);

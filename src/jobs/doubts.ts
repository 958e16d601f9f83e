import { doubtsAbout, Kin, type TimeGiven } from '../core/assess/doubts.js';
import type { Delivery } from '../core/model/delivery.js';
import { DossierError, type Problem } from '../core/model/error.js';
import type { EvidenceId, ReadingBody } from '../core/model/evidence.js';
import { omitUndefined } from '../core/model/omit-undefined.js';
import type { Doubt } from '../core/model/results/doubts.js';
import type { RecordState } from '../core/model/state.js';
import { formatFor } from '../core/words/format.js';
import { plainSpaces } from '../core/words/spaces.js';

/** Which doubts a person has put aside: all of them, or those of some kinds. */
export type Sure = boolean | readonly Doubt['is'][];

/** What a typed reading is held against: the readings that count, and those that are taken in before it. */
export class KnownKin extends Kin {
  /** @param without evidence that is being corrected, and is no kin of itself */
  constructor({ delivery, evidence }: RecordState, now: Date, without?: EvidenceId) {
    const readings = evidence.filter(
      (item): item is Extract<typeof item, { source: unknown }> =>
        'source' in item && item.evidence !== without,
    );
    super(delivery, readings, now.getTime());
  }

  doubts(reading: ReadingBody, given: TimeGiven, sure: Sure = false): Doubt[] {
    if (sure === true) return [];
    const doubts = doubtsAbout(reading, given, this);
    return sure === false ? doubts : doubts.filter(({ is }) => !sure.includes(is));
  }
}

/** How the time of a reading was given, from the words that were typed for it. */
export function timeGiven(typed: unknown): TimeGiven {
  if (typed === undefined) return 'left-out';
  return typeof typed === 'string' && typed.trim().toLowerCase() === 'now' ? 'now' : 'typed';
}

/** A doubt in words, with the ways on. */
export function doubtProblem(
  doubt: Doubt,
  reading: Pick<ReadingBody, 'line' | 'place'>,
  delivery: Delivery,
): Problem {
  const { message, field, fix } = wordsOf(doubt, reading, delivery);
  return { code: 'doubtful', message: plainSpaces(message), where: { field }, fix: plainSpaces(fix) };
}

/** The error of a reading that is doubted where nobody can be asked. */
export function doubtedError(problems: readonly Problem[]): DossierError {
  const [first, ...rest] = problems;
  return new DossierError('doubtful', first?.message ?? 'it may be mistyped', {
    where: first?.where ?? {},
    ...omitUndefined({ fix: first?.fix }),
    others: rest.map(({ message }) => message),
  });
}

const SURE = 'If it is right as it stands: --sure.';

function wordsOf(
  doubt: Doubt,
  reading: Pick<ReadingBody, 'line' | 'place'>,
  delivery: Delivery,
): { message: string; field: string; fix: string } {
  const format = formatFor({ temperature: delivery.show.temperature, language: 'en' });
  const range = ({ low, high }: { low: number; high: number }) =>
    `the instructed ${format.short(low)} to ${format.short(high)}`;
  const about = [reading.line, reading.place?.stop].filter((part) => part !== undefined).join(' at ');
  switch (doubt.is) {
    case 'far-from-instruction':
      return {
        message: `${format.temperature(doubt.celsius)} is ${format.difference(doubt.beyondKelvin)} outside ${range(doubt)}`,
        field: doubt.field,
        fix: `Look at the number and its unit. ${SURE}`,
      };
    case 'other-unit':
      return {
        message: `${format.temperature(doubt.celsius)} is far from ${range(doubt)}; in the other unit the number would be ${format.short(doubt.otherCelsius)}`,
        field: doubt.field,
        fix: `Look at the unit. ${SURE}`,
      };
    case 'far-from-neighbours': {
      const others = doubt.neighbours === 1 ? 'the other pulp' : `the ${doubt.neighbours} other pulps`;
      return {
        message: `${format.temperature(doubt.celsius)} is ${format.difference(doubt.beyondKelvin)} away from ${others} of ${about === '' ? 'the load' : about}, about ${format.short(doubt.middle)}`,
        field: 'temperature',
        fix: `Look at the number and its unit. ${SURE}`,
      };
    }
    case 'outside-delivery':
      return {
        message: `it is ${days(doubt.days)} ${doubt.side} the ${doubt.side === 'before' ? 'first' : 'last'} time that is known or planned of this delivery, ${time(doubt.bound)}`,
        field: '--at',
        fix: `Look at the day. ${SURE}`,
      };
    case 'no-time-given':
      return {
        message: `no time is given, and the last time that is known or planned of this delivery is ${days(doubt.days)} ago, ${time(doubt.last)}`,
        field: '--at',
        fix: 'Say when: --at TIME. If it is now: --at now.',
      };
    case 'inspected-before-arrival':
    case 'inspected-after-disposal': {
      const before = doubt.is === 'inspected-before-arrival';
      const known = doubt.evidence === undefined ? '' : ` (${doubt.evidence})`;
      return {
        message: `the inspection is ${before ? 'before the truck arrived' : 'after the goods were disposed of'} there, ${time(doubt.event)}${known}`,
        field: '--at',
        fix: `Look at the day and the hour. ${SURE}`,
      };
    }
    case 'recorded-before': {
      const { evidence, event, stop } = doubt;
      return {
        message: `${event} at ${stop} is recorded already${evidence === undefined ? '' : ` (${evidence})`}`,
        field: event,
        fix: `${evidence === undefined ? 'Leave one out.' : `To put that one right: dossier correct ${evidence}.`} If it happened twice: --sure.`,
      };
    }
  }

  function time(at: number): string {
    const zone = delivery.stops.find(({ id }) => id === reading.place?.stop)?.zone ?? delivery.stops[0]?.zone;
    return zone === undefined ? new Date(at).toISOString() : format.time(at, zone);
  }
}

const days = (count: number) => (count === 1 ? 'a day' : `${count} days`);

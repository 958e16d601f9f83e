import { photosByCamera } from '../core/assess/camera-clocks/camera.js';
import { reconcileTimes } from '../core/assess/reconcile-times.js';
import type { EntryOf } from '../core/model/entry.js';
import { DossierError } from '../core/model/error.js';
import type { EvidenceId } from '../core/model/evidence.js';
import { omitUndefined } from '../core/model/omit-undefined.js';
import type { EvidenceItem, ItemOf, RecordState } from '../core/model/state.js';
import {
  type KnownTime,
  milliseconds,
  toInstant,
  type Zone,
  zone as zoneSchema,
} from '../core/model/time.js';
import { numbersFor } from '../core/words/numbers.js';
import { plainSpaces } from '../core/words/spaces.js';
import { readDisplay } from '../intake/time/display.js';
import { parseTypedTime } from '../intake/typed.js';
import { type OpenDelivery, withDelivery } from './delivery.js';
import { parseZoneOption } from './typed/zone-option.js';

const duration = (seconds: number) => plainSpaces(numbersFor('en').exactDuration(seconds));

/** What a clock showed at a time that is known. */
export interface ClockComparisonInput extends OpenDelivery {
  /** The reading of the clock, as typed. */
  display: string;
  /** Photo of the display. */
  photo: string | undefined;
  /** The true time, as typed. */
  true: string | undefined;
  /** The unit log with that clock; every log of the delivery by default. */
  log: string | undefined;
  /** The camera with that clock, instead of the unit. */
  camera: string | undefined;
  /** Zone that the clock is set to. */
  zone: string | undefined;
}

/** The error of a clock that was recorded. */
export interface RecordedClockComparison {
  /** Ledger entry. */
  entry: number;
  addSeconds: number;
  uncertaintySeconds: number;
  said: string;
}

type Clock = EntryOf<'clock-compared'>['body']['clock'];

/**
 * Records a comparison of a clock with true time: by a photo of the display whose time rests on satellite time or a
 * stated offset, or as a person states it. Throws DossierError `bad-value` when a word is not understood, the
 * photo's time cannot serve, or the difference looks like another zone.
 */
export async function recordClock(input: ClockComparisonInput): Promise<RecordedClockComparison> {
  return withDelivery(input, true, async (record) => {
    const state = reconcileTimes(record.state());
    const photo = input.photo === undefined ? undefined : photoOf(state, input.photo);
    const logs = state.evidence.filter(isCurrentLog);
    const log = input.log === undefined ? undefined : logs.find(({ evidence }) => evidence === input.log);
    if (input.log !== undefined && log === undefined)
      throw wrong('--log', `there is no unit log ${input.log}`, `Use one of: ${idsOf(logs)}.`);
    const clock: Clock =
      input.camera === undefined
        ? { is: 'unit-log', ...omitUndefined({ evidence: log?.evidence }) }
        : { is: 'camera', camera: cameraOf(state, input.camera) };
    const told =
      input.zone === undefined
        ? undefined
        : parseZoneOption(input.zone, '--zone', state.delivery.stops[0]?.zone);
    const logZone = clock.is === 'camera' ? undefined : oneZone(log === undefined ? logs : [log]);
    const truth = trueTime(input, photo, told ?? logZone ?? onlyStopZone(state));
    const zone = told ?? logZone ?? truth.zone;
    const shown = readDisplay(input.display, zone, milliseconds(truth.instant));
    if (shown === undefined)
      throw wrong(
        'display-time',
        `"${input.display}" is not a time`,
        'Write it as shown: 04:32, 4:32pm, 04:32:10.',
      );
    const addSeconds = (milliseconds(truth.instant) - shown.at) / 1000;
    if (told === undefined && looksLikeZone(addSeconds))
      throw wrong(
        'display-time',
        `the clock would be off by ${duration(addSeconds)}, which looks like another zone or half of the day`,
        `Say which zone the clock is set to, such as --zone ${zone}, or write am or pm.`,
      );
    const uncertaintySeconds = Math.ceil(truth.uncertaintySeconds + shown.uncertaintySeconds);
    const by = photo === undefined ? 'as told' : `in the photo ${photo.evidence}`;
    const from = `display ${input.display} (${zone}) ${by}; true time ${truth.instant} (${truth.basis})`;
    const entry = record.entries.length;
    await record.append([
      {
        type: 'clock-compared',
        by: input.by,
        body: {
          clock,
          at: truth.instant,
          addSeconds,
          uncertaintySeconds,
          from,
          how: photo === undefined ? 'told' : 'display-photo',
          ...omitUndefined({ photo: photo?.evidence }),
        },
      },
    ]);
    const whose = clock.is === 'camera' ? `the clock of ${clock.camera}` : "the unit's clock";
    const off =
      Math.abs(addSeconds) <= uncertaintySeconds
        ? 'is right'
        : `is ${duration(addSeconds)} ${addSeconds < 0 ? 'fast' : 'slow'}`;
    return {
      entry,
      addSeconds,
      uncertaintySeconds,
      said: `${whose} ${off}, to within ${uncertaintySeconds} s, ${by}`,
    };
  });
}

/** Seconds; a day alone measures no clock. */
const MOST_UNCERTAIN = 3600;

function trueTime(
  input: ClockComparisonInput,
  photo: ItemOf<'photo'> | undefined,
  zone: Zone | undefined,
): KnownTime {
  if (input.true !== undefined) {
    const shownIn = photo?.time.is === 'known' ? photo.time.zone : zone;
    if (shownIn === undefined && !/(?:Z|[+-]\d{2}:?\d{2})$/i.test(input.true.trim()))
      throw wrong(
        '--true',
        `"${input.true}" names no zone`,
        'Add its offset from UTC, such as -07:00, or Z.',
      );
    const read = parseTypedTime(input.true, {
      now: toInstant(input.now().getTime()),
      zone: shownIn ?? zoneSchema.parse('UTC'),
      field: '--true',
    });
    if (read.is === 'problem') throw new DossierError(read.problem.code, read.problem.message, read.problem);
    if (read.time.is === 'known' && read.time.uncertaintySeconds > MOST_UNCERTAIN)
      throw wrong('--true', `"${input.true}" has no time of day`, 'Add it, such as 04:33.');
    if (read.time.is === 'known') return read.time;
  }
  const time = photo?.time;
  if (photo === undefined || time === undefined)
    throw wrong(
      '--photo',
      'nothing says what time it really was',
      'Name the photo of the display with --photo, or the true time with --true.',
    );
  if (time.is !== 'known' || (time.basis !== 'gps' && time.basis !== 'offset'))
    throw wrong(
      '--photo',
      `the time of ${photo.evidence} rests neither on satellite time nor on a stated offset`,
      'Say what time it really was: --true 04:33.',
    );
  return time;
}

function photoOf(state: RecordState, id: string): ItemOf<'photo'> {
  const found = state.evidence.find(({ evidence }) => evidence === id);
  if (found?.kind !== 'photo')
    throw wrong('--photo', `there is no photo ${id}`, 'Use its id as collect shows it, such as e14.');
  return found;
}

function cameraOf(state: RecordState, named: string): string {
  const names = [...photosByCamera(state.evidence).keys()];
  const found = names.find((name) => name.toLowerCase() === named.toLowerCase());
  if (found === undefined)
    throw wrong(
      '--camera',
      `no photo was taken with "${named}"`,
      `Use one of: ${names.join(', ') || 'none yet'}.`,
    );
  return found;
}

/** Whether a log is not replaced by a later reading of the same file. */
function isCurrentLog(item: EvidenceItem): item is ItemOf<'unit-log'> {
  return item.kind === 'unit-log' && item.replacedBy === undefined;
}

/** The common zone of these logs' clocks. */
function oneZone(logs: readonly ItemOf<'unit-log'>[]): Zone | undefined {
  const [zone, other] = new Set(logs.map(({ mapping }) => mapping.time.zone));
  return zone === 'offset' || other !== undefined ? undefined : zone;
}

function onlyStopZone({ delivery }: RecordState): Zone | undefined {
  const [zone, other] = new Set(delivery.stops.map((stop) => stop.zone));
  return other === undefined ? zone : undefined;
}

/** From twenty minutes on, and within three minutes of whole quarters of an hour. */
function looksLikeZone(seconds: number): boolean {
  const rest = Math.abs(seconds - Math.round(seconds / 900) * 900);
  return Math.abs(seconds) >= 1200 && rest <= 180;
}

const idsOf = (items: readonly { evidence: EvidenceId }[]) =>
  items.map(({ evidence }) => evidence).join(', ') || 'none yet';

function wrong(field: string, message: string, fix: string): DossierError {
  return new DossierError('bad-value', message, { where: { field }, fix });
}

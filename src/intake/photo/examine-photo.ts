import type { Delivery, Stop } from '../../model/delivery.js';
import type { Problem } from '../../model/error.js';
import type { FileRef, Flag, Place } from '../../model/evidence.js';
import { knownMilliseconds } from '../../model/time.js';
import type { TimedWithFlags } from '../clock/event-time.js';
import type { Hint, ReceivedDraftOf } from '../draft.js';
import { AT_STOP_METRES, nearestStop, onlyZone, type Position, stopByTime, stopFlags } from '../place.js';
import { captureTime, editingTraces } from './capture-time.js';
import { type RawExif, readExif } from './exif.js';
import { lookAt } from './picture.js';

export interface PhotoInput {
  /** Where the bytes can be read. */
  path: string;
  file: FileRef;
  /** Media type by content. */
  type: string;
  delivery: Delivery;
  hint?: Hint;
}

/**
 * Draws up a photo's evidence: size, camera, position, when it was taken and how sure that is, the stop it
 * belongs to, and flags. Never throws for a bad picture: a broken one is kept, flagged and named as a problem.
 */
export async function examinePhoto(
  input: PhotoInput,
): Promise<{ received: ReceivedDraftOf<'photo'>; problems: Problem[] }> {
  const { path, file, type, delivery, hint } = input;
  const picture = await lookAt(path, type);
  const exif = await readExif(path, picture.metadata);
  const gps = positionOf(exif);
  const { stop, timed, flags } = placeAndTime(exif, gps, delivery, hint?.place?.stop);
  const nearest = gps === undefined ? undefined : nearestStop(delivery, gps);
  const judged = stop ?? nearest?.stop;
  const all = [
    ...picture.flags,
    ...timed.flags,
    ...flags,
    ...editingTraces(exif),
    ...(judged === undefined
      ? []
      : stopFlags(judged, gps, timed.time).filter((f) => stop !== undefined || f.is === 'far-from-stop')),
  ];
  const camera = cameraOf(exif);
  const { width, height } = picture.metadata ?? {};
  const place: Place = {
    ...hint?.place,
    ...(stop === undefined ? {} : { stop: stop.id }),
    ...(gps === undefined ? {} : { gps }),
  };
  return {
    received: {
      kind: 'photo',
      file,
      time: timed.time,
      flags: all,
      ...(Object.keys(place).length === 0 ? {} : { place }),
      ...(hint?.subject === undefined ? {} : { subject: hint.subject }),
      ...(hint?.line === undefined ? {} : { line: hint.line }),
      ...(hint?.by === undefined ? {} : { by: hint.by }),
      ...(hint?.caption === undefined ? {} : { caption: hint.caption }),
      ...(width === undefined || width < 1 ? {} : { width }),
      ...(height === undefined || height < 1 ? {} : { height }),
      ...(exif.orientation === undefined ? {} : { orientation: exif.orientation }),
      ...(camera === undefined ? {} : { camera }),
    },
    problems: all
      .filter((flag) => flag.is === 'picture-unreadable')
      .map((flag) => ({
        code: 'unreadable-file',
        message: `${flag.detail}; its bytes are kept as they are`,
        where: { file: file.name },
        fix: 'if a whole copy is still on the phone, collect that too',
      })),
  };
}

/** The stop by what a person said, by position, or by time; its zone is the place's zone. */
function placeAndTime(
  exif: RawExif,
  gps: Position | undefined,
  delivery: Delivery,
  said: string | undefined,
): { stop: Stop | undefined; timed: TimedWithFlags; flags: Flag[] } {
  const told = delivery.stops.find((s) => s.id === said);
  const nearest = gps === undefined ? undefined : nearestStop(delivery, gps);
  const here = told ?? (nearest !== undefined && nearest.metres <= AT_STOP_METRES ? nearest.stop : undefined);
  const zone = here?.zone ?? onlyZone(delivery);
  const timed = captureTime(exif, zone);
  if (here !== undefined || nearest !== undefined) return { stop: here, timed, flags: [] };
  const at = knownMilliseconds(timed.time);
  if (at !== undefined) {
    const stop = stopByTime(delivery, at);
    return { stop, timed: stop === undefined ? timed : captureTime(exif, stop.zone), flags: [] };
  }
  // A local time without zone: the one stop near whose planned time it falls, read in that stop's own zone.
  const fitting = delivery.stops.flatMap((stop) => {
    const own = captureTime(exif, stop.zone);
    const moment = knownMilliseconds(own.time);
    return moment !== undefined && stopByTime(delivery, moment) === stop ? [{ stop, timed: own }] : [];
  });
  const [only] = fitting;
  if (only === undefined || fitting.length > 1) return { stop: undefined, timed, flags: [] };
  const detail = `read in the zone of ${only.stop.id}, near whose planned time it falls; the photo itself states no zone`;
  return { ...only, flags: [{ is: 'time-zone-unknown', detail }] };
}

function positionOf(exif: RawExif): Position | undefined {
  return exif.latitude === undefined || exif.longitude === undefined
    ? undefined
    : { latitude: exif.latitude, longitude: exif.longitude };
}

function cameraOf({
  make,
  model,
  serial,
}: RawExif): { make?: string; model?: string; serial?: string } | undefined {
  if (make === undefined && model === undefined && serial === undefined) return undefined;
  return {
    ...(make === undefined ? {} : { make }),
    ...(model === undefined ? {} : { model }),
    ...(serial === undefined ? {} : { serial }),
  };
}

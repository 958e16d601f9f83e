import type { Delivery } from '../../core/model/delivery.js';
import type { Problem } from '../../core/model/error.js';
import type { ContentCredentials, FileRef, Flag, Place } from '../../core/model/evidence.js';
import { omitUndefined } from '../../core/model/omit-undefined.js';
import { type EventTime, milliseconds } from '../../core/model/time.js';
import type { Hint, ReceivedDraftOf } from '../draft.js';
import type { Coordinates } from '../place.js';
import { dayOfFileName } from '../time/file-name-day.js';
import { statedTimes } from './capture-time.js';
import { readCredentials } from './credentials/read-credentials.js';
import { editingTraces } from './editing.js';
import type { RawExif } from './exif.js';
import { examinePicture } from './picture.js';
import { placeAndTime } from './place-and-time.js';

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
 * Makes a photo's evidence: size, camera, position, time and its uncertainty, stop, and flags. Never throws for a
 * bad picture: it is kept, flagged and reported as a problem.
 */
export async function examinePhoto(
  input: PhotoInput,
): Promise<{ received: ReceivedDraftOf<'photo'>; problems: Problem[] }> {
  const { path, file, type, delivery, hint } = input;
  const [picture, credentials] = await Promise.all([examinePicture(path, type), readCredentials(path, type)]);
  const { exif } = picture;
  const gps = positionOf(exif);
  const { stop, timed, flags } = placeAndTime(exif, gps, delivery, hint?.place?.stop);
  const time = betterTime(timed.time, hint?.time, dayOfFileName(file.name, delivery, stop));
  const all = [
    ...picture.flags,
    ...timed.flags,
    ...flags,
    ...editingTraces(exif),
    ...brokenCredentials(credentials),
  ];
  const camera = cameraOf(exif);
  const stated = statedTimes(exif);
  const { width, height } = picture.size ?? {};
  const place: Place = {
    ...hint?.place,
    ...omitUndefined({ stop: stop?.id, gps }),
  };
  return {
    received: {
      kind: 'photo',
      file,
      time,
      flags: all,
      ...omitUndefined({
        place: Object.keys(place).length === 0 ? undefined : place,
        subject: hint?.subject,
        line: hint?.line,
        by: hint?.by,
        caption: hint?.caption,
        width: width === undefined || width < 1 ? undefined : width,
        height: height === undefined || height < 1 ? undefined : height,
        orientation: exif.orientation,
        camera,
        statedTimes: stated,
        credentials,
        sceneHash: picture.sceneHash,
      }),
    },
    problems: [
      ...all
        .filter((flag) => flag.is === 'picture-unreadable')
        .map(
          (flag): Problem => ({
            code: 'unreadable-file',
            message: `${flag.detail}; its bytes are kept as they are`,
            where: { file: file.name },
            fix: 'if a whole copy is still on the phone, collect that too',
          }),
        ),
      ...uncheckedCredentials(credentials, file.name),
      ...contradictions(time, hint?.time, file.name),
    ],
  };
}

/** The file's own time; else what a person or a chat says; else the day in its name. */
function betterTime(own: EventTime, said: EventTime | undefined, named: EventTime | undefined): EventTime {
  if (own.is === 'known') return own;
  return said ?? (own.is === 'none' ? named : undefined) ?? own;
}

/** Seconds by which a time that a person wrote may differ from the file's own before it is told. */
const APART = 3600;

function contradictions(time: EventTime, said: EventTime | undefined, file: string): Problem[] {
  if (time.is !== 'known' || said?.is !== 'known' || said.basis !== 'typed') return [];
  const apart = Math.abs(milliseconds(time.instant) - milliseconds(said.instant)) / 1000;
  if (apart <= APART + said.uncertaintySeconds + time.uncertaintySeconds) return [];
  return [
    {
      code: 'bad-value',
      message: `its caption says ${said.stated ?? said.instant}, the file itself ${time.stated ?? time.instant}; the file's own is kept`,
      where: { file, column: 'time' },
      fix: 'where the caption is right: dossier describe EVIDENCE --time TIME --why REASON',
    },
  ];
}

function brokenCredentials(credentials: ContentCredentials | undefined): Flag[] {
  if (credentials?.state !== 'broken') return [];
  const detail = `the picture is not as it was signed: ${credentials.findings.join(', ')}`;
  return [{ is: 'credentials-broken', detail }];
}

/** A check that was given up can be made another time; the picture keeps its credentials. */
function uncheckedCredentials(credentials: ContentCredentials | undefined, file: string): Problem[] {
  if (credentials?.state !== 'not-checked') return [];
  return [
    {
      code: 'unsupported-file',
      message: `its content credentials were not checked: ${credentials.findings.join(', ')}; they are kept in it`,
      where: { file },
      fix: 'have them checked with a program for content credentials (C2PA), which the original still carries',
    },
  ];
}

function positionOf(exif: RawExif): Coordinates | undefined {
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
    ...omitUndefined({ make, model, serial }),
  };
}

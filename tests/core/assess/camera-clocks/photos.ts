import type { EvidenceOf } from '../../../../src/core/model/evidence.js';
import { omitUndefined } from '../../../../src/core/model/omit-undefined.js';
import type { ItemOf, RecordState } from '../../../../src/core/model/state.js';
import { type EventTime, toInstant, zone } from '../../../../src/core/model/time.js';
import { HASH, items } from '../made.js';

/** Photos and comparisons of clocks, made up, with only what a test is about. */

const PHOENIX = zone.parse('America/Phoenix');
export const MOMENT = Date.parse('2026-07-14T12:00:00Z');
/** Minutes east of UTC in Phoenix, all year. */
const MST = -420;

export interface PhotoFields {
  name?: string;
  camera?: string | null;
  /** Minutes after MOMENT, true time. */
  minutes: number;
  /** Seconds that the camera's clock is fast. */
  fast?: number;
  /** Age of the satellite fix in seconds; left out: none. */
  fix?: number;
  /** The camera states its offset. */
  offset?: boolean;
  time?: EventTime;
  flags?: EvidenceOf<'photo'>['flags'];
  sceneHash?: string;
}

/** Photos as collecting would have drawn them up, unless a time is given. */
export function photos(...list: PhotoFields[]): ItemOf<'photo'>[] {
  return items(
    ...list.map((taken, i) => {
      const { minutes, fast = 0, fix, offset = true } = taken;
      const at = MOMENT + minutes * 60_000;
      const camera = at + fast * 1000;
      const wall = new Date(camera + MST * 60_000).toISOString().replace(/(?:\.000)?Z$/, '');
      const time: EventTime = {
        is: 'known',
        instant: toInstant(fix === 0 ? at : camera),
        zone: PHOENIX,
        basis: fix === 0 ? 'gps' : offset ? 'offset' : 'place-zone',
        uncertaintySeconds: fix === undefined || fix === 0 ? 1 : Math.abs(fix + fast),
        stated: `${wall}${offset ? '-07:00' : ''}`,
      };
      return {
        kind: 'photo' as const,
        file: { name: taken.name ?? `IMG_${100 + i}.jpg`, bytes: 1, sha256: HASH, type: 'image/jpeg' },
        flags: taken.flags ?? [],
        time: taken.time ?? time,
        ...omitUndefined({
          camera: taken.camera === null ? undefined : { make: 'Invented', model: taken.camera ?? 'M-1' },
        }),
        statedTimes: {
          camera: wall as NonNullable<NonNullable<EvidenceOf<'photo'>['statedTimes']>['camera']>,
          ...omitUndefined({
            offsetMinutes: offset ? MST : undefined,
            gps: fix === undefined ? undefined : toInstant(at - fix * 1000),
          }),
        },
        ...omitUndefined({ sceneHash: taken.sceneHash }),
      };
    }),
  ).filter((item) => item.kind === 'photo');
}

type Comparison = RecordState['clocks'][number];

export function clockComparison(
  clock: Comparison['clock'],
  seq: number,
  minutes: number,
  addSeconds: number,
  more: Partial<Comparison> = {},
): Comparison {
  return {
    clock,
    seq,
    at: toInstant(MOMENT + minutes * 60_000),
    addSeconds,
    uncertaintySeconds: 2,
    from: 'a test',
    ...more,
  };
}

export const CAMERA = { is: 'camera', camera: 'Invented M-1' } as const;
export const UNIT = { is: 'unit-log' } as const;

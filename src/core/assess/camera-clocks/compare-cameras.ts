import type { EvidenceId } from '../../model/evidence.js';
import { omitUndefined } from '../../model/omit-undefined.js';
import type { ItemOf, RecordState } from '../../model/state.js';
import { type ClockPoint, milliseconds } from '../../model/time.js';
import { photosByCamera } from './camera.js';
import { median, medianDeviation } from './statistics.js';

/** With fewer photos a clock that is off cannot be told from one stale satellite fix. */
const FEWEST = 3;
/** Photos needed in each half of the trip before drift is computed. */
const FEWEST_FOR_DRIFT = 3;
/**
 * A clock within this many seconds is right: the lag of a satellite fix and reading to whole seconds account for
 * that much. Own judgement, no source.
 */
const RIGHT = 10;
/**
 * Share of the photos that must agree with the measured offset before times are corrected by it. Own judgement, no
 * source.
 */
const MOST = 0.75;
/**
 * Seconds of change between the halves of a trip above which the clock was set, or there are two cameras: no clock
 * drifts so fast.
 */
const STEP = 60;
const QUARTER_HOUR = 900;

/** What the photos of one camera that also state satellite time show about its clock. */
export interface CameraClock {
  camera: string;
  /** The photos that were compared, in the order of their satellite times. */
  photos: EvidenceId[];
  /** Median of satellite time minus camera time, seconds: what to add to the camera's clock. */
  medianSeconds: number;
  /** Median distance from the median, or where the clock drifts from the median of each half of the trip. */
  spreadSeconds: number;
  /** Median of the later half minus that of the earlier half, seconds; undefined with too few photos. */
  driftSeconds?: number;
  /** Whether the offset changes by more than its spread, slowly enough for a clock that was left alone. */
  drifts: boolean;
  verdict: 'right' | 'off' | 'unsteady' | 'too-few';
  /** What was measured: one point, or one of each half when the clock drifts. */
  points: Omit<ClockPoint, 'seq'>[];
}

/**
 * Compares the camera's clock with satellite time, camera by camera, over all photos of a delivery that state both.
 * Where the camera states no offset from UTC, only the part that is not whole quarters of an hour is an error of
 * the clock, since the rest may be its zone. A fix is older than the photo, which makes the clock seem fast by the
 * fix's age; the median discards what only a few photos show. A clock is `right` when at least half of the photos
 * show it, and `off` only when three in four agree by how much.
 */
export function compareCameraClocks(state: Pick<RecordState, 'evidence'>): CameraClock[] {
  return [...photosByCamera(state.evidence)].flatMap(([camera, photos]) => {
    const differences = photos
      .flatMap((photo) => differenceOf(photo) ?? [])
      .sort((a, b) => a.at - b.at || a.seconds - b.seconds);
    return differences.length === 0 ? [] : [judge(camera, differences)];
  });
}

interface Difference {
  evidence: EvidenceId;
  /** Satellite time, milliseconds UTC. */
  at: number;
  seconds: number;
}

function differenceOf({ evidence, statedTimes }: ItemOf<'photo'>): Difference | undefined {
  if (statedTimes?.camera === undefined || statedTimes.gps === undefined) return undefined;
  const at = milliseconds(statedTimes.gps);
  const offset = statedTimes.offsetMinutes;
  const seconds = (at - Date.parse(`${statedTimes.camera}Z`)) / 1000;
  if (offset !== undefined) return { evidence, at, seconds: seconds + offset * 60 };
  return { evidence, at, seconds: seconds - Math.round(seconds / QUARTER_HOUR) * QUARTER_HOUR };
}

function judge(camera: string, all: readonly Difference[]): CameraClock {
  const half = Math.floor(all.length / 2);
  const halves = half < FEWEST_FOR_DRIFT ? [] : [all.slice(0, half), all.slice(all.length - half)];
  const [early, late] = halves.map(middle);
  const driftSeconds = early === undefined || late === undefined ? undefined : late - early;
  const drifts = driftSeconds !== undefined && isDrift(driftSeconds, halves);
  const parts = drifts ? halves : [all];
  const spreadSeconds = Math.max(...parts.map((part) => medianDeviation(part.map(seconds))));
  const points = parts.map((part) => ({
    at: Math.round(median(part.map(({ at }) => at))),
    addSeconds: middle(part),
    uncertaintySeconds: Math.max(1, Math.ceil(spreadSeconds)),
  }));
  return {
    camera,
    photos: all.map(({ evidence }) => evidence),
    medianSeconds: middle(all),
    spreadSeconds,
    ...omitUndefined({ driftSeconds }),
    drifts,
    verdict: verdictOf(all.length, parts),
    points,
  };
}

const seconds = (one: Difference): number => one.seconds;
const middle = (part: readonly Difference[]): number => median(part.map(seconds));

function isDrift(drift: number, halves: readonly (readonly Difference[])[]): boolean {
  const spread = Math.max(...halves.map((part) => medianDeviation(part.map(seconds))));
  // Reading both clocks to the second leaves two seconds undecided.
  return Math.abs(drift) > Math.max(2, spread) && Math.abs(drift) <= STEP && agreement(halves) >= MOST;
}

/** Share of the photos that lie near the median of their part. */
function agreement(parts: readonly (readonly Difference[])[]): number {
  const near = parts.flatMap((part) => part.filter((one) => Math.abs(one.seconds - middle(part)) <= RIGHT));
  return near.length / parts.reduce((sum, part) => sum + part.length, 0);
}

function verdictOf(count: number, parts: readonly (readonly Difference[])[]): CameraClock['verdict'] {
  if (count < FEWEST) return 'too-few';
  if (parts.every((part) => Math.abs(middle(part)) <= RIGHT)) return 'right';
  return agreement(parts) >= MOST ? 'off' : 'unsteady';
}

import type { EvidenceId } from '../../model/evidence.js';
import type { ItemOf, RecordState } from '../../model/state.js';
import { type ClockPoint, milliseconds } from '../../model/time.js';
import { photosByCamera } from './camera.js';
import { median, medianDeviation } from './statistics.js';

/** Fewer photos can't tell a clock that is off from one satellite fix that was old. */
const FEWEST = 3;
/** Photos in each half of the trip without which no drift is looked for. */
const FEWEST_FOR_DRIFT = 3;
/** Seconds within which a clock is right: what a fix lags and whole seconds leave open. Own judgement, no source. */
const RIGHT = 10;
/** Seconds beyond which the differences agree too little with each other to measure anything. */
const UNSTEADY = 10;
const QUARTER_HOUR = 900;

/** What the photos of one camera, that state satellite time too, show about its clock. */
export interface CameraClock {
  camera: string;
  /** The photos that were compared, in the order of their satellite times. */
  photos: EvidenceId[];
  /** Median of satellite time minus camera time, seconds: what to add to the camera's clock. */
  medianSeconds: number;
  /** Median distance from the median (of each half of the trip, where there are enough). */
  spreadSeconds: number;
  /** Median of the later half minus that of the earlier half, seconds; undefined with too few photos. */
  driftSeconds?: number;
  /** Whether the offset changes by more than its spread. */
  drifts: boolean;
  verdict: 'right' | 'off' | 'unsteady' | 'too-few';
  /** What was measured: one point, or one of each half when the clock drifts. */
  points: Omit<ClockPoint, 'seq'>[];
}

/**
 * Compares satellite time with the camera's clock, camera by camera, over all photos of a delivery that state both.
 * Where the camera states no offset from UTC, only what misses whole quarters of an hour is an error of the
 * clock, since the rest may be its zone. A fix is older than the photo by its age, which makes a clock seem
 * fast by as much; the median leaves out what only some photos show.
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

function judge(camera: string, differences: readonly Difference[]): CameraClock {
  const all = differences.map(({ seconds }) => seconds);
  const half = Math.floor(differences.length / 2);
  const halves = [differences.slice(0, half), differences.slice(differences.length - half)] as const;
  const halved = half >= FEWEST_FOR_DRIFT;
  const [early, late] = halves.map((list) => list.map(({ seconds }) => seconds));
  const spreadSeconds =
    halved && early !== undefined && late !== undefined
      ? Math.max(medianDeviation(early), medianDeviation(late))
      : medianDeviation(all);
  const driftSeconds =
    halved && early !== undefined && late !== undefined ? median(late) - median(early) : undefined;
  // Two whole seconds are what reading both clocks to the second leaves open.
  const drifts = driftSeconds !== undefined && Math.abs(driftSeconds) > Math.max(2, spreadSeconds);
  const uncertaintySeconds = Math.max(1, Math.ceil(spreadSeconds));
  const point = (list: readonly Difference[]) => ({
    at: Math.round(median(list.map(({ at }) => at))),
    addSeconds: median(list.map(({ seconds }) => seconds)),
    uncertaintySeconds,
  });
  const points = drifts ? halves.map(point) : [point(differences)];
  return {
    camera,
    photos: differences.map(({ evidence }) => evidence),
    medianSeconds: median(all),
    spreadSeconds,
    ...(driftSeconds === undefined ? {} : { driftSeconds }),
    drifts,
    verdict: verdictOf(differences.length, spreadSeconds, points),
    points,
  };
}

function verdictOf(
  count: number,
  spread: number,
  points: readonly { addSeconds: number }[],
): CameraClock['verdict'] {
  if (count < FEWEST) return 'too-few';
  if (spread > UNSTEADY) return 'unsteady';
  return points.every(({ addSeconds }) => Math.abs(addSeconds) <= RIGHT) ? 'right' : 'off';
}

/** Samples farther apart than this many median steps are not joined. */
const STEPS = 3;
/** Samples within half an hour are always joined. */
const LEAST_SECONDS = 30 * 60;

type Steps = { medianStepSeconds: number; gapLimitSeconds: number };

/** Cached per column: a column never changes, and many computations use the same one. */
const known = new WeakMap<Float64Array, Steps>();

/** Median time between neighbouring rows and the longest step over which they are joined: max(3 × median, 30 min). */
export function gapLimit(times: Float64Array): Steps {
  const found = known.get(times);
  if (found !== undefined) return found;
  const medianStepSeconds = medianStep(times) / 1000;
  const steps = { medianStepSeconds, gapLimitSeconds: Math.max(STEPS * medianStepSeconds, LEAST_SECONDS) };
  known.set(times, steps);
  return steps;
}

/** Milliseconds; 0 with fewer than two rows. */
function medianStep(times: Float64Array): number {
  if (times.length < 2) return 0;
  const steps = times.slice(1);
  for (let i = 0; i < steps.length; i++) steps[i] = (steps[i] as number) - (times[i] as number);
  steps.sort();
  return ((steps[(steps.length - 1) >>> 1] as number) + (steps[steps.length >>> 1] as number)) / 2;
}

/** Samples farther apart than this many median steps are not joined. */
const STEPS = 3;
/** But half an hour is always joined. */
const LEAST_SECONDS = 30 * 60;

/** Median time between neighbouring rows and the longest step over which they are joined: max(3 × median, 30 min). */
export function gapLimit(times: Float64Array): { medianStepSeconds: number; gapLimitSeconds: number } {
  const medianStepSeconds = medianStep(times) / 1000;
  return { medianStepSeconds, gapLimitSeconds: Math.max(STEPS * medianStepSeconds, LEAST_SECONDS) };
}

/** Milliseconds; 0 with fewer than two rows. */
function medianStep(times: Float64Array): number {
  const count = times.length - 1;
  if (count < 1) return 0;
  const steps = new Float64Array(count);
  for (let i = 0; i < count; i++) steps[i] = (times[i + 1] as number) - (times[i] as number);
  steps.sort();
  const middle = count >>> 1;
  return count % 2 === 1 ? at(steps, middle) : (at(steps, middle - 1) + at(steps, middle)) / 2;
}

const at = (array: Float64Array, index: number): number => array[index] ?? 0;

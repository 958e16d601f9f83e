import type { Finding, TemperatureResult } from '../../model/results.js';
import { duration, type FindingContext, finding, share, time, zoneOf } from './make.js';

const BY = 'run mode in the log against the instruction';
/** The mode of a defrost, a start or a switch by hand; longer is another mode. Seconds; convention. */
const PASSING = 15 * 60;

/** The run mode of the log against the one instructed. */
export function runModeFindings(context: FindingContext, { log, run }: TemperatureResult): Finding[] {
  if (run?.asked === undefined || run.runs === undefined) return [];
  const { asked, runs, otherSeconds = 0 } = run;
  const lasted = runs.reduce((sum, { from, to }) => sum + to - from, 0) / 1000;
  const first = runs.find(({ mode }) => mode !== asked);
  if (first === undefined || otherSeconds <= PASSING)
    return [finding('run-mode-as-instructed', BY, [log], { asked, lasted: duration(lasted - otherSeconds) })];
  return [
    finding('run-mode-differs', BY, [log], {
      asked,
      other: first.mode,
      lasted: duration(otherSeconds),
      share: share(otherSeconds / lasted),
      firstAt: time(first.from, zoneOf(context.state)),
    }),
  ];
}

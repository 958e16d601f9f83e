import { omitUndefined } from '../../model/omit-undefined.js';
import type {
  Finding,
  RecorderComparison,
  RecorderIdentity,
  TemperatureResult,
} from '../../model/results.js';
import {
  difference,
  duration,
  type FindingContext,
  finding,
  inCompartment,
  share,
  temperature,
} from './make.js';

/**
 * Recorders in the load: what each shows, and how they agree with the unit's log and with each other. What one shows by
 * itself stays open: it is the air at a place that the record may not name, of an instrument that may be another's.
 */
export function recorderFindings(context: FindingContext): Finding[] {
  const { temperatures, recorders } = context;
  return [
    ...temperatures
      .filter(({ instrument }) => instrument === 'recorder')
      .flatMap((one) => airOf(context, one)),
    ...(recorders?.comparisons ?? []).flatMap((one) => compared(one, recorders?.identities ?? [])),
  ];
}

function airOf({ recorders }: FindingContext, result: TemperatureResult): Finding[] {
  const { band } = result;
  const air = result.channels.find(({ channel }) => channel === result.judged);
  if (band === undefined || air?.min === undefined || air.max === undefined) return [];
  const known = recorders?.identities.find(({ log }) => log === result.log);
  return [
    inCompartment(
      result.compartment,
      finding('recorder-air', 'air at a recorder in the load against the range', [result.log], {
        share: share(air.inBandSeconds / air.knownSeconds),
        coverage: share(air.coverage),
        min: temperature(air.min.value),
        max: temperature(air.max.value),
        low: temperature(band.low),
        high: temperature(band.high),
        ...omitUndefined({ serial: known?.serial, owner: known?.owner, place: known?.place }),
      }),
    ),
  ];
}

function compared(
  { difference: found, clock, moved, verdict, clockSteps }: RecorderComparison,
  identities: readonly RecorderIdentity[],
): Finding[] {
  const evidence = [found.first.log, found.second.log];
  const facts = {
    mean: difference(found.mean),
    limit: difference(found.limitKelvin),
    apart: share(found.knownSeconds === 0 ? 0 : found.apartSeconds / found.knownSeconds),
    known: duration(found.knownSeconds),
    ...omitUndefined({ moved: moved ? true : undefined }),
  };
  const isNamed = evidence.every((log) => {
    const one = identities.find((identity) => identity.log === log);
    return one?.instrument === 'unit' || (one?.serial !== undefined && one.owner !== undefined);
  });
  const by = 'two recorders at every sample of either';
  return [
    verdict === 'disagree'
      ? finding('recorders-disagree', by, evidence, facts)
      : // What nobody can name vouches for nothing.
        finding('recorders-agree', by, evidence, facts, isNamed ? undefined : 'open'),
    // A clock that was set on the way is told as that, and not as one distance all the way.
    ...(moved && clock !== undefined && clockSteps.length === 0
      ? [
          finding('recorder-clock-off', 'likeness of the two curves', evidence, {
            size: duration(Math.abs(clock.seconds)),
            slow: clock.seconds > 0,
            within: duration(clock.uncertaintySeconds),
          }),
        ]
      : []),
  ];
}

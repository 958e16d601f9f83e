import { omitUndefined } from '../../model/omit-undefined.js';
import type {
  ExcursionClass,
  ExcursionClassSums,
  ExcursionSums,
  Finding,
  TemperatureResult,
} from '../../model/results.js';
import {
  degreeHours,
  duration,
  type FindingContext,
  finding,
  share,
  temperature,
  time,
  zoneOf,
} from './make.js';

const BY = 'excursions of the air';

const FINDING_OF = {
  'normal-operation': 'excursions-normal-operation',
  handling: 'excursions-handling',
  equipment: 'excursions-equipment',
  instruction: 'excursions-instruction',
} as const satisfies Record<Exclude<ExcursionClass, 'not-explained'>, string>;

/** One finding for each class of excursions that occurs: what units do by themselves is told apart from what is not. */
export function excursionFindings(context: FindingContext, result: TemperatureResult): Finding[] {
  const known = result.channels.find(({ channel }) => channel === result.judged)?.knownSeconds ?? 0;
  return result.excursionTotals.classes.map((sums) =>
    sums.class === 'not-explained'
      ? finding('excursions-unexplained', BY, [result.log], {
          ...sumFacts(context, sums),
          ...heatCameIn(result),
        })
      : finding(FINDING_OF[sums.class], BY, [result.log, ...doorEvidence(result, sums)], {
          ...sumFacts(context, sums),
          logged: sums.logged,
          inferred: sums.inferred,
          causes: sums.causes.map(({ is }) => is).join(', '),
          share: share(known === 0 ? 0 : sums.seconds / known),
        }),
  );
}

function sumFacts(context: FindingContext, { highest, lowest, ...sums }: ExcursionSums) {
  return {
    count: sums.count,
    total: duration(sums.seconds),
    longest: duration(sums.longestSeconds),
    ...omitUndefined({
      highest: highest === undefined ? undefined : temperature(highest),
      lowest: lowest === undefined ? undefined : temperature(lowest),
    }),
    degreeHours: degreeHours(sums.degreeHours),
    firstAt: time(sums.firstAt, zoneOf(context.state)),
  };
}

/** In how many of the listed excursions without a cause more heat came in than usual. */
function heatCameIn({ excursions }: TemperatureResult): { heatIn?: number } {
  const count = excursions.filter(
    (one) => one.class === 'not-explained' && one.heat?.shows === 'heat-came-in',
  ).length;
  return omitUndefined({ heatIn: count === 0 ? undefined : count });
}

function doorEvidence({ excursions }: TemperatureResult, sums: ExcursionClassSums) {
  return excursions.flatMap(({ class: is, cause }) =>
    is === sums.class && cause.is !== 'unexplained' ? (cause.evidence ?? []) : [],
  );
}

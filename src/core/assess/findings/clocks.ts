import { omitUndefined } from '../../model/omit-undefined.js';
import type { Finding, SeenClockStep, TemperatureResult } from '../../model/results.js';
import { duration, type FindingContext, finding, time, zoneOf } from './make.js';

/** The clock of one log: compared, set on the way, put right. */
export function clockFindings(context: FindingContext, result: TemperatureResult): Finding[] {
  return [...compared(context, result), ...steps(context, result), ...putRight(result)];
}

function compared(context: FindingContext, { log }: TemperatureResult): Finding[] {
  const added = context.logs.find(({ evidence }) => evidence === log)?.addedSeconds ?? 0;
  if (added === 0) return [];
  return [
    finding('log-clock-corrected', 'clock comparison', [log], {
      added: duration(Math.abs(added)),
      slow: added > 0,
    }),
  ];
}

/** Where a clock was set and nobody said yet which part is wrong: one finding for each place, however many rows it has. */
function steps(context: FindingContext, { log, clockSteps = [] }: TemperatureResult): Finding[] {
  const zone = zoneOf(context.state);
  const seen = (context.recorders?.comparisons ?? []).flatMap(({ clockSteps: found, difference }) =>
    found.filter((step) => step.log === log).map((step) => ({ step, against: othersOf(difference, log) })),
  );
  const isSame = (at: number, step: SeenClockStep) => step.at === at;
  const shown = clockSteps.map((step) => {
    const also = seen.filter((one) => isSame(step.from, one.step));
    return finding('log-clock-step', 'order of the rows', [log, ...also.flatMap(({ against }) => against)], {
      size: duration(Math.abs(step.seconds)),
      within: duration(step.uncertaintySeconds),
      forward: step.seconds > 0,
      at: time(step.from, zone),
      ...omitUndefined({
        row: step.row,
        hidden: step.hiddenRows === 0 ? undefined : step.hiddenRows,
        seen: also.length === 0 ? undefined : also.length,
      }),
    });
  });
  const alone = new Map<number, (typeof seen)[number]>();
  for (const one of seen)
    if (!clockSteps.some(({ from }) => isSame(from, one.step)) && !alone.has(one.step.at))
      alone.set(one.step.at, one);
  return [
    ...shown,
    ...[...alone.values()].map(({ step, against }) =>
      finding('log-clock-step', 'curve of another recorder before and after', [log, ...against], {
        size: duration(Math.abs(step.seconds)),
        within: duration(step.uncertaintySeconds),
        forward: step.seconds > 0,
        at: time(step.at, zone),
        seen: 1,
      }),
    ),
  ];
}

const othersOf = (
  { first, second }: { first: { log: TemperatureResult['log'] }; second: { log: TemperatureResult['log'] } },
  log: TemperatureResult['log'],
) => [first.log, second.log].filter((one) => one !== log);

function putRight({ log, clockShifts = [] }: TemperatureResult): Finding[] {
  return clockShifts.map(({ rows, addSeconds }) =>
    finding('log-clock-step-corrected', 'as a person said', [log], {
      size: duration(Math.abs(addSeconds)),
      added: addSeconds > 0,
      after: 'from' in rows,
      row: 'from' in rows ? rows.from : rows.before,
    }),
  );
}

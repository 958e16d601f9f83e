import type { Finding, LineMargin } from '../../model/results.js';
import { celsius } from '../../model/temperature.js';
import { ROUNDING } from '../bands.js';
import { instructionFreezes } from '../instruction-freezes.js';
import { isSecondary } from '../published-limits.js';
import { JUMP_KELVIN } from '../temperature/jumps.js';
import { counterfactualFindings } from './counterfactual.js';
import {
  difference,
  duration,
  type FindingContext,
  finding,
  inCompartment,
  lineRef,
  temperature,
  time,
  zoneOf,
} from './make.js';

/** Findings of each line from published limits and logged air, and on values excluded from the logs. */
export function productFindings(context: FindingContext): Finding[] {
  return [
    ...(context.margins ?? []).flatMap((margin) => [
      ...freezingFinding(context, margin),
      ...chillingFinding(context, margin),
    ]),
    ...counterfactualFindings(context),
    ...excludedValueFindings(context),
  ];
}

function freezingFinding(context: FindingContext, { line, log, produce, freezing }: LineMargin): Finding[] {
  const worst = freezing?.channels.reduce<(typeof freezing.channels)[number] | undefined>(
    (least, one) => (least === undefined || one.margin < least.margin ? one : least),
    undefined,
  );
  const [point] = freezing?.points ?? [];
  if (freezing === undefined || worst === undefined || point === undefined) return [];
  const stop = context.state.delivery.lines.find((one) => one.id === line)?.from;
  const isBelow = worst.margin < -ROUNDING;
  const isBelowAll = worst.belowAllSeconds > 0;
  const asInstructed =
    isBelow && instructionFreezes(context.state.delivery.lines.find(({ id }) => id === line));
  return [
    finding(
      isBelow ? 'air-below-freezing-point' : 'air-above-freezing-point',
      'lowest air against the published freezing points',
      [log],
      {
        line: lineRef(line),
        goods: produce.name,
        channel: worst.channel,
        lowest: temperature(worst.lowest.value),
        at: time(worst.lowest.at, zoneOf(context.state, stop)),
        point: temperature(freezing.celsius),
        margin: difference(Math.abs(worst.margin)),
        below: duration(worst.belowSeconds),
        source: point.source,
        secondary: isSecondary(freezing.points),
        differ: isBelow && !isBelowAll,
        asInstructed,
        published: { is: 'published', of: 'temperature', by: freezing.points },
      },
      !isBelow ? 'helps' : isBelowAll && !asInstructed ? 'hurts' : 'open',
    ),
  ];
}

/**
 * Time in the cold that harms by some source: the shipper's choice where the bill instructs a temperature in it, and open
 * where another source recommends that very cold.
 */
function chillingFinding(context: FindingContext, { line, log, produce, chilling }: LineMargin): Finding[] {
  if (chilling === undefined) return [];
  const seconds = chilling.is === 'band' ? chilling.insideSeconds : chilling.belowHighSeconds;
  if (seconds === 0) return [];
  const instruction = context.state.delivery.lines.find((one) => one.id === line)?.instruction;
  const asked = instruction === undefined ? undefined : celsius(instruction.setPoint);
  const asInstructed =
    asked !== undefined &&
    asked < chilling.high - ROUNDING &&
    (chilling.is === 'floor' || asked > chilling.low + ROUNDING);
  const asRecommended = chilling.againstAllSeconds === 0;
  return [
    finding(
      'air-in-chilling-range',
      'time of the air in the cold that harms by some source',
      [log],
      {
        line: lineRef(line),
        goods: produce.name,
        low: temperature(chilling.low),
        high: temperature(chilling.high),
        band: chilling.is === 'band',
        below: duration(seconds),
        belowLowest: duration(chilling.belowLowSeconds),
        asInstructed,
        asRecommended,
        published: { is: 'published', of: 'temperature', by: chilling.limits },
        secondary: isSecondary(chilling.limits),
      },
      asInstructed || asRecommended ? 'open' : 'hurts',
    ),
  ];
}

function excludedValueFindings(context: FindingContext): Finding[] {
  return context.temperatures.flatMap(({ log, compartment, jumps = [], jumpCount = 0 }) => {
    if (jumpCount === 0) return [];
    const values = jumps.map((jump) => jump.celsius);
    return [
      inCompartment(
        compartment,
        finding('log-values-left-out', 'jumps that no air can make', [log], {
          count: jumpCount,
          limit: difference(JUMP_KELVIN),
          highest: temperature(Math.max(...values)),
          lowest: temperature(Math.min(...values)),
        }),
      ),
    ];
  });
}

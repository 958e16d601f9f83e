import type {
  Assessment,
  LineMargin,
  ProductAssumption,
  ProductResult,
  PulpGroup,
} from '../core/model/results.js';
import type { TemperatureUnit } from '../core/model/temperature.js';
import {
  formatDegreeHours,
  formatDifference,
  formatDuration,
  formatTemperature,
  idInWords,
} from './degrees.js';
import type { Output } from './output.js';
import { printWrapped } from './table.js';

/** Pulps, margins to published limits, and consistency of pulps and air. */
export function printGoods(output: Output, assessment: Assessment, unit: TemperatureUnit): void {
  if (assessment.pulps.length > 0) {
    output.line(output.style('bold', 'Pulps'));
    for (const group of assessment.pulps) printPulps(output, group, unit);
    for (const line of new Set(assessment.pulps.flatMap(thermometerLines))) put(output, line);
    for (const one of assessment.pulpComparisons ?? [])
      put(
        output,
        `${one.line}: ${one.is === 'delivery-against-loading' ? 'delivery minus loading' : `receiver minus driver at ${one.stop}`} ${formatDifference(one.mean, unit)} on average`,
      );
    output.line();
  }
  const margins = assessment.margins ?? [];
  if (margins.length > 0) {
    output.line(output.style('bold', 'Published limits of the goods'));
    for (const margin of margins) for (const line of marginLines(margin, unit)) put(output, line);
    output.line();
  }
  const product = assessment.product ?? [];
  if (product.length > 0) {
    output.line(output.style('bold', 'Pulps against the air: plausibility, never proof'));
    for (const one of product) put(output, productLine(one, unit));
  }
}

const put = (output: Output, text: string): void => printWrapped(output, text, '  ');

function printPulps(output: Output, group: PulpGroup, unit: TemperatureUnit): void {
  const inBand = group.band === undefined ? '' : `, ${group.inBand} of ${group.count} in band`;
  put(
    output,
    `${group.line} at ${group.stop}: ${group.count} from ${formatTemperature(group.min, unit)} to ${formatTemperature(group.max, unit)}, mean ${formatTemperature(group.mean, unit)}${inBand}`,
  );
}

/** The thermometers of a group. Most groups of a delivery have the same ones: each line is printed once. */
function thermometerLines({ instruments }: PulpGroup): string[] {
  return (instruments ?? []).map(({ instrument, check }) => {
    const said =
      check === undefined
        ? 'no ice-water check before it in the record'
        : `ice-water check ${check.evidence}${check.names ? '' : ', which does not say which thermometer'}`;
    return `thermometer ${instrument ?? 'not named'}: ${said}`;
  });
}

function marginLines(margin: LineMargin, unit: TemperatureUnit): string[] {
  const { freezing, chilling, range, life } = margin;
  const of = `${margin.line} (${margin.produce.name}, log ${margin.log})`;
  const memory = (fromMemory: boolean) => (fromMemory ? '; from memory' : '');
  const lines: string[] = [];
  for (const one of freezing?.channels ?? [])
    lines.push(
      `${of}: lowest ${idInWords(one.channel)} ${formatTemperature(one.lowest.value, unit)}, ${formatDifference(one.margin, unit)} from the highest freezing point ${formatTemperature(freezing?.celsius ?? 0, unit)}${one.belowSeconds > 0 ? `, below it ${formatDuration(one.belowSeconds)}` : ''}`,
    );
  for (const point of freezing?.points ?? [])
    lines.push(
      `  freezing point ${formatTemperature(point.celsius, unit)}: ${point.source}${memory(point.fromMemory)}`,
    );
  lines.push(
    `${of}: above the published range (to ${formatTemperature(range.high, unit)}) ${formatDuration(range.aboveSeconds)}, ${formatDegreeHours(range.kelvinHoursAbove, unit)}: ${range.source}${memory(range.fromMemory)}`,
  );
  if (chilling !== undefined)
    lines.push(
      chilling.is === 'band'
        ? `${of}: in the chilling band ${formatTemperature(chilling.low, unit)} to ${formatTemperature(chilling.high, unit)} ${formatDuration(chilling.insideSeconds)}: ${chilling.source}${memory(chilling.fromMemory)}`
        : `${of}: below the chilling threshold ${formatTemperature(chilling.high, unit)} ${formatDuration(chilling.belowHighSeconds)}, below ${formatTemperature(chilling.low, unit)} ${formatDuration(chilling.belowLowSeconds)}: ${chilling.source}${memory(chilling.fromMemory)}`,
    );
  if (life !== undefined)
    lines.push(
      `${of}: by respiration ${formatDuration(life.knownSeconds)} in this air cost the life of ${formatDuration(life.equivalentSeconds)} at ${formatTemperature(life.reference, unit)} (an estimate): ${life.source}${memory(life.fromMemory)}`,
    );
  return lines;
}

const WHY: Record<NonNullable<ProductResult['why']>, string> = {
  'no-loading-pulps': 'no pulps at loading',
  'no-arrival-pulps': 'no pulps at delivery',
  'air-not-known': 'the air is not known for enough of the way',
  iced: 'iced goods follow their ice, not the air',
  'pulps-on-both-sides': 'pulps lie on both sides of what is plausible',
};
const MATTERS: Record<ProductAssumption, string> = {
  'half-cooling-time': 'the half-cooling time',
  'loading-pulps': 'the range of the loading pulps',
  respiration: 'the heat of respiration',
  'air-channel': 'which air the product stood in',
};

function productLine(one: ProductResult, unit: TemperatureUnit): string {
  const of = `${one.line} (log ${one.log})`;
  const half = one.assumptions.halfCoolingSeconds;
  const allowed =
    one.envelope === undefined
      ? ''
      : ` ${formatTemperature(one.envelope.low, unit)} to ${formatTemperature(one.envelope.high, unit)} plausible, ${formatTemperature(one.arrival?.min ?? 0, unit)} to ${formatTemperature(one.arrival?.max ?? 0, unit)} read;`;
  if (one.verdict === 'not-decidable') return `${of}: not decidable, ${WHY[one.why ?? 'air-not-known']}`;
  return `${of}: ${one.verdict};${allowed} half-cooling ${formatDuration(half.low)} to ${formatDuration(half.high)} (${half.from}), thermometers ±${formatDifference(one.toleranceKelvin, unit)}; what matters most: ${one.matters === undefined ? '-' : MATTERS[one.matters.is]}`;
}

import type {
  Assessment,
  LineMargin,
  ProductAssumption,
  ProductResult,
  PublishedLimit,
  PulpGroup,
} from '../../core/model/results.js';
import type { Format } from '../../core/words/format.js';
import { showPublished } from '../../core/words/published.js';
import type { Output } from '../output.js';
import { idInWords, printWrapped } from '../print.js';

/** Pulps, margins to published limits, and consistency of pulps and air. */
export function printGoods(output: Output, assessment: Assessment, format: Format): void {
  if (assessment.pulps.length > 0) {
    output.line(output.style('bold', 'Pulps'));
    for (const group of assessment.pulps) printPulps(output, group, format);
    for (const line of new Set(assessment.pulps.flatMap(thermometerLines))) put(output, line);
    for (const one of assessment.pulpComparisons ?? [])
      put(
        output,
        `${one.line}: ${one.is === 'delivery-against-loading' ? 'delivery minus loading' : `receiver minus driver at ${one.stop}`} ${format.difference(one.mean)} on average`,
      );
    output.line();
  }
  const margins = assessment.margins ?? [];
  if (margins.length > 0) {
    output.line(output.style('bold', 'Published limits of the goods'));
    for (const margin of margins) for (const line of marginLines(margin, format)) put(output, line);
    output.line();
  }
  const product = assessment.product ?? [];
  if (product.length > 0) {
    output.line(output.style('bold', 'Pulps against the air: plausibility, never proof'));
    for (const one of product) put(output, productLine(one, format));
  }
}

const put = (output: Output, text: string): void =>
  printWrapped(output, text, { mark: '  ', further: '    ' });

function printPulps(output: Output, group: PulpGroup, format: Format): void {
  const inBand = group.band === undefined ? '' : `, ${group.inBand} of ${group.count} in band`;
  put(
    output,
    `${group.line} at ${group.stop}: ${group.count} from ${format.temperature(group.min)} to ${format.temperature(group.max)}, mean ${format.temperature(group.mean)}${inBand}`,
  );
  if (group.sample === undefined) return;
  const { least, most, confidence } = group.sample;
  const atLeast = least > 0 ? `, at least ${format.share(least)} are` : '';
  put(
    output,
    `  picked at random, that still allows up to ${format.share(most)} of its cartons out of range${atLeast} (${format.share(confidence)} each)`,
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

function marginLines(margin: LineMargin, format: Format): string[] {
  const { freezing, chilling, range, life } = margin;
  const of = `${margin.line} (${margin.produce.name}, log ${margin.log})`;
  const limitsIn = (limits: readonly PublishedLimit[]) => sourcedLimits(limits, format);
  const lines: string[] = [];
  for (const one of freezing?.channels ?? [])
    lines.push(
      `${of}: lowest ${idInWords(one.channel)} ${format.temperature(one.lowest.value)}, ${format.difference(one.margin)} from the highest freezing point ${format.temperature(freezing?.celsius ?? 0)}${one.belowSeconds > 0 ? `, below it ${format.duration(one.belowSeconds)}` : ''}`,
    );
  if (freezing !== undefined) lines.push(`  freezing points: ${limitsIn(freezing.points)}`);
  for (const limit of range?.bySource ?? [])
    lines.push(
      `${of}: above ${limitsIn([limit])} ${format.duration(limit.aboveSeconds)}, ${format.degreeHours(limit.kelvinHoursAbove)}; below ${format.duration(limit.belowSeconds)}`,
    );
  if (chilling !== undefined)
    lines.push(
      chilling.is === 'band'
        ? `${of}: in a band where cold harms ${format.duration(chilling.insideSeconds)}: ${limitsIn(chilling.limits)}`
        : `${of}: below a floor under which cold harms ${format.duration(chilling.belowHighSeconds)}, of which ${format.duration(chilling.againstAllSeconds)} against every source: ${limitsIn(chilling.limits)}`,
    );
  if (life !== undefined)
    lines.push(
      `${of}: by respiration ${format.duration(life.knownSeconds)} in this air cost the life of ${format.duration(life.equivalentSeconds)} at ${format.temperature(life.reference)} (an estimate): ${life.source}${life.secondary ? '; secondary' : ''}`,
    );
  return lines;
}

/** What each source says, and where it is one that retells another. */
const sourcedLimits = (limits: readonly PublishedLimit[], format: Format): string =>
  `${showPublished({ is: 'published', of: 'temperature', by: [...limits] }, format)}${limits.some(({ secondary }) => secondary) ? '; secondary' : ''}`;

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

function productLine(one: ProductResult, format: Format): string {
  const of = `${one.line} (log ${one.log})`;
  const half = one.assumptions.halfCoolingSeconds;
  const allowed =
    one.envelope === undefined
      ? ''
      : ` ${format.temperature(one.envelope.low)} to ${format.temperature(one.envelope.high)} plausible, ${format.temperature(one.arrival?.min ?? 0)} to ${format.temperature(one.arrival?.max ?? 0)} read;`;
  if (one.verdict === 'not-decidable') return `${of}: not decidable, ${WHY[one.why ?? 'air-not-known']}`;
  return `${of}: ${one.verdict};${allowed} half-cooling ${format.duration(half.low)} to ${format.duration(half.high)} (${half.from}), thermometers ±${format.difference(one.toleranceKelvin)}; what matters most: ${one.matters === undefined ? '-' : MATTERS[one.matters.is]}`;
}

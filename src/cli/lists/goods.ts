import { furtherReadings } from '../../core/assess/sampling/share-bounds.js';
import { omitUndefined } from '../../core/model/omit-undefined.js';
import type {
  Assessment,
  ChangeAnswer,
  CounterfactualVerdict,
  LineMargin,
  ProductInput,
  ProductResult,
  PublishedLimit,
  PulpComparison,
  PulpGroup,
  PulpPlace,
  PulpsDiffer,
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
    for (const line of new Set(assessment.pulps.flatMap((one) => thermometerLines(one, format))))
      put(output, line);
    for (const one of assessment.pulpComparisons ?? [])
      for (const line of comparisonLines(one, format)) put(output, line);
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
    output.line(output.style('bold', 'Loaded otherwise, what would have arrived: plausibility, never proof'));
    for (const one of product) for (const line of productLines(one, format)) put(output, line);
  }
}

const put = (output: Output, text: string): void =>
  printWrapped(output, text, { mark: '  ', further: '    ' });

/** A share that readings at a dock can still show. Convention of this project. */
const SHARE_AIMED_AT = 0.1;

/** The parts of the load that were read least, where to go on. */
function fewestRead({ readings }: PulpGroup): string {
  const parts = (['nose', 'middle', 'tail'] as const).map((position) => ({
    position,
    count: readings.filter((one) => one.position === position).length,
  }));
  const least = Math.min(...parts.map(({ count }) => count));
  return `; begin at the ${parts.flatMap(({ position, count }) => (count === least ? [position] : [])).join(', ')}`;
}

function printPulps(output: Output, group: PulpGroup, format: Format): void {
  const inBand = group.band === undefined ? '' : `, ${group.inBand} of ${group.count} in range as read`;
  const { answers } = group;
  const decided =
    answers === undefined
      ? ''
      : `; with room for the thermometers ${answers.within} within, ${answers.above} above, ${answers.below} below, ${answers['not-decidable']} not decidable`;
  put(
    output,
    `${group.line} at ${group.stop}: ${group.count} from ${format.temperature(group.min)} to ${format.temperature(group.max)}, mean ${format.temperature(group.mean)}${inBand}${decided}`,
  );
  if (group.sample === undefined) return;
  const { least, most, confidence } = group.sample;
  const atLeast = least > 0 ? `, at least ${format.share(least)} are` : '';
  put(
    output,
    `  picked at random, that still allows up to ${format.share(most)} of its cartons out of range${atLeast} (${format.share(confidence)} each)`,
  );
  // A reading that is out of range is no matter of more readings.
  if (group.inBand < group.count) return;
  const more = furtherReadings(
    {
      taken: group.count,
      beyond: 0,
      ...omitUndefined({ of: group.sample.cartons }),
    },
    SHARE_AIMED_AT,
    confidence,
  );
  if (more !== undefined && more > 0)
    put(
      output,
      `  ${more} more, all in range and picked at random, would leave no more than ${format.share(SHARE_AIMED_AT)} (${format.share(confidence)})${fewestRead(group)}`,
    );
}

/** The thermometers of a group. Most groups of a delivery have the same ones: each line is printed once. */
function thermometerLines({ instruments }: PulpGroup, format: Format): string[] {
  return (instruments ?? []).map(({ instrument, check, record, guardKelvin }) => {
    const said =
      check === undefined
        ? 'no ice-water check before it in the record'
        : `ice-water check ${check.evidence}${check.names ? '' : ', which does not say which thermometer'}`;
    const off = (record?.checks ?? []).map(({ errorKelvin }) => format.signed(errorKelvin));
    const errors =
      off.length === 0 ? '' : `; in ice it was off by ${off.join(', then ')}, which is taken off`;
    return `thermometer ${instrument ?? 'not named'}: ${said}${errors}; room to a limit ${format.difference(guardKelvin)}`;
  });
}

const DIFFERS: Record<PulpsDiffer, string> = {
  place: 'some places have readings on one side alone',
  'place-not-stated': 'some readings do not say where',
  thermometer: 'thermometers differ',
  'thermometer-not-named': 'some readings name no thermometer',
};

/** Changes of each place that both sides have, and what else is not alike: means of unlike readings are not subtracted. */
function comparisonLines(one: PulpComparison, format: Format): string[] {
  const what =
    one.is === 'delivery-against-loading' ? 'delivery minus loading' : `receiver minus driver at ${one.stop}`;
  const of = `${one.line}, ${what}`;
  const give = (kelvin: number, guard: number) => `${format.signed(kelvin)} ± ${format.difference(guard)}`;
  const pairs = one.pairs.map(
    (pair) =>
      `${of}, ${placeInWords(pair.place)}: ${give(pair.change, pair.guardKelvin)}, ${CHANGE[pair.answer]}${pair.sameThermometer ? '' : '; not one thermometer'}`,
  );
  const without =
    one.pairs.length > 0
      ? []
      : [
          `${of}: no place was read on both sides; between any two readings ${format.signed(one.leastRise)} to ${format.signed(one.mostRise)}, ± ${format.difference(one.guardKelvin)}, ${CHANGE[one.answer]}`,
        ];
  const unlike =
    one.differs.length === 0 ? [] : [`  not alike: ${one.differs.map((is) => DIFFERS[is]).join('; ')}`];
  return [...pairs, ...without, ...unlike];
}

const CHANGE: Record<ChangeAnswer, string> = {
  rose: 'warmer',
  fell: 'colder',
  'not-decidable': 'not decidable',
};

const placeInWords = ({ pallet, height, carton, position }: PulpPlace): string =>
  [
    ...(pallet === undefined ? [] : [`pallet ${pallet}`]),
    ...(height === undefined ? [] : [height]),
    ...(carton === undefined ? [] : [`carton ${carton}`]),
    ...(position === undefined ? [] : [position]),
  ].join(', ');

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
  'no-instruction': 'the bill instructs no temperature',
  'instruction-freezes': 'the bill instructs a temperature below the freezing points of the goods',
};
const MATTERS: Record<ProductInput, string> = {
  'half-cooling-time': 'the half-cooling time',
  'loading-pulps': 'the loading pulps and their thermometer',
  respiration: 'the heat of respiration',
  'air-at-place': 'the air at the place',
};
const VERDICT: Record<CounterfactualVerdict, string> = {
  origin: 'supports out of range at origin',
  transit: 'supports out of range in transit',
  both: 'does not discriminate',
  neither: 'goes with neither',
};

function productLines(one: ProductResult, format: Format): string[] {
  const of = `${one.line} (log ${one.log})`;
  const half = one.assumptions.halfCoolingSeconds;
  const range = ({ low, high }: { low: number; high: number }) =>
    `${format.temperature(low)} to ${format.temperature(high)}`;
  if (one.why !== undefined) return [`${of}: not decidable, ${WHY[one.why]}`];
  const rests = `  half-cooling ${format.duration(half.low)} to ${format.duration(half.high)} (${half.from}); ${one.draws} cases; what matters most: ${one.matters === undefined ? '-' : MATTERS[one.matters.is]}`;
  if (one.places.length === 0) return [`${of}: no place arrived clearly out of range`, rests];
  return [
    ...one.places.map(
      (place) =>
        `${of}, ${placeInWords(place.place) || 'place not stated'}: ${format.temperature(place.arrival.mean)} read; as measured at loading ${range(place.asMeasured)}, as instructed ${range(place.asInstructed)} would have been: ${VERDICT[place.verdict]}`,
    ),
    rests,
  ];
}

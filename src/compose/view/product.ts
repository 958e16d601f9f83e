import { logNamed } from '../../core/assess/logs/compartments.js';
import { productCourse } from '../../core/assess/product/course.js';
import { envelopeChart } from '../../core/charts/envelope.js';
import { curves, type Point } from '../../core/charts/reduce.js';
import type { EvidenceId } from '../../core/model/evidence.js';
import { omitUndefined } from '../../core/model/omit-undefined.js';
import type { PlaceCounterfactual, ProductResult } from '../../core/model/results.js';
import { celsius } from '../../core/model/temperature.js';
import { knownMilliseconds } from '../../core/model/time.js';
import { type Block, type Fact, plain, wordsOf } from '../../core/words/blocks.js';
import { exhibitLinks, type View } from './context.js';
import type { DrawnSection } from './drawn-section.js';
import { sameLocalTime } from './glance.js';
import { sourceText } from './margins.js';
import { placeInWords } from './pulp-comparisons.js';
import { groupName } from './pulps.js';
import { formatRange } from './range.js';
import { tableOf } from './tables.js';

/**
 * What the pulps allow: of the cartons that nobody probed, and of the product beside the logged air, with a drawing for
 * each line. Nothing where nothing of it can be computed.
 */
export function productSection(view: View): DrawnSection | undefined {
  const samples = sampleBlocks(view);
  const { blocks, drawings } = consistencyBlocks(view);
  if (samples.length + blocks.length === 0) return undefined;
  const title = view.labels('section.product');
  return { section: { id: 'product', title, blocks: [...samples, ...blocks] }, drawings };
}

/** What so few readings leave open of the whole line, for each line and stop. */
function sampleBlocks(view: View): Block[] {
  const items = view.input.assessment.pulps.flatMap(({ sample, inBand, count, ...group }): Block[][] => {
    if (sample === undefined) return [];
    const { least, most, confidence } = sample;
    const words = view.words.line('pulp-sample', {
      inRange: inBand,
      count,
      least: { is: 'share', of: least },
      most: { is: 'share', of: most },
      confidence: { is: 'share', of: confidence },
    });
    return [[{ is: 'paragraph', of: [...plain(`${groupName(view, group)}: `), ...words] }]];
  });
  if (items.length === 0) return [];
  return [
    { is: 'heading', level: 2, text: view.labels('sub.samples') },
    { is: 'list', ordered: false, items },
  ];
}

/** What would have arrived, loaded as instructed and as measured: a table of the places, a drawing for each line. */
function consistencyBlocks(view: View): { blocks: Block[]; drawings: Map<string, string> } {
  const { labels, words } = view;
  const results = view.input.assessment.product ?? [];
  const drawings = new Map<string, string>();
  if (results.length === 0) return { blocks: [], drawings };
  const blocks: Block[] = [
    { is: 'heading', level: 2, text: labels('sub.product') },
    ...words.blocks('sections/product', { draws: results[0]?.draws ?? 0 }),
    verdicts(view, results),
  ];
  results.forEach((result, i) => {
    const drawing = drawingOf(view, result);
    if (drawing === undefined) return;
    const asset = `envelope-${i + 1}.svg`;
    drawings.set(asset, drawing);
    blocks.push(
      { is: 'heading', level: 3, text: view.names.line(result.line) },
      { is: 'picture', asset, alt: altOf(view, result), caption: [] },
      { is: 'facts', facts: assumptions(view, result) },
    );
  });
  return { blocks, drawings };
}

interface Row {
  result: ProductResult;
  place?: PlaceCounterfactual;
}

/** A row for each place that arrived out of range, or one for a line of which none did or nothing can be asked. */
function verdicts(view: View, results: readonly ProductResult[]): Block {
  const { labels, format } = view;
  const rows = results.flatMap((result): Row[] =>
    result.places.length === 0 ? [{ result }] : result.places.map((place) => ({ result, place })),
  );
  return tableOf<Row>(view, rows, [
    ['line', 1.7, ({ result }) => view.names.line(result.line)],
    ['position', 1.1, ({ place }) => (place === undefined ? '' : placeInWords(view, place.place))],
    [
      'loading-pulps',
      1.7,
      ({ result, place }) => formatRange(view, endsOf(place?.loading ?? result.loading)),
    ],
    ['as-measured', 1.7, ({ result, place }) => formatRange(view, place?.asMeasured ?? result.asMeasured)],
    [
      'as-instructed',
      1.7,
      ({ result, place }) => formatRange(view, place?.asInstructed ?? result.asInstructed),
    ],
    [
      'arrival-pulps',
      1.7,
      ({ result, place }) =>
        place === undefined
          ? formatRange(view, endsOf(result.arrival))
          : `${format.temperature(place.arrival.mean)} ± ${format.difference(place.arrival.guardKelvin)}`,
    ],
    ['what', 2.2, ({ result, place }) => labels(`product.${result.why ?? place?.verdict ?? result.verdict}`)],
    ['source', 0.8, ({ result }) => exhibitLinks(view, [result.log])],
  ]);
}

const endsOf = (range: { min: number; max: number } | undefined) =>
  range === undefined ? undefined : { low: range.min, high: range.max };

function assumptions(view: View, { assumptions: assumed, matters, window }: ProductResult): Fact[] {
  const { labels, format } = view;
  const fact = (name: string, words: string): Fact => ({
    label: labels(`assumed.${name}`),
    value: plain(words),
  });
  const half = assumed.halfCoolingSeconds;
  return [
    fact(
      'half-cooling',
      `${format.duration(half.low)} – ${format.duration(half.high)} (${labels(`product-load.${assumed.load}`)}; ${view.remark('source', half.from)})`,
    ),
    fact(
      'air',
      `${assumed.channels.map((name) => labels(`channel.${name}`).toLowerCase()).join(', ')}; ${labels('assumed.sensors')} ± ${format.difference(assumed.sensorKelvin)}; ${labels('assumed.air-at-place')} ± ${format.difference(assumed.airAtPlaceKelvin)}; ${labels('assumed.cartons')} ± ${format.difference(assumed.cartonsKelvin)}`,
    ),
    fact(
      'respiration',
      assumed.respiration === undefined ? labels('none.respiration') : sourceText(view, assumed.respiration),
    ),
    fact(
      'specific-heat',
      `${format.number(assumed.specificHeat.joulesPerKilogramKelvin)} J/(kg·K), ${labels(
        assumed.specificHeat.own ? 'assumed.own' : 'assumed.not-own',
      )}; ${view.remark('source', assumed.specificHeat.source)}`,
    ),
    fact(
      'known',
      `${format.share(assumed.coverage)} ${labels('assumed.of')} ${
        window === undefined ? '–' : format.duration((window.to - window.from) / 1000)
      }${
        assumed.afterSeconds !== undefined && assumed.afterSeconds > 0
          ? `; ${labels('assumed.after').replace('TIME', format.duration(assumed.afterSeconds))}`
          : ''
      }`,
    ),
    ...(matters === undefined
      ? []
      : [fact('matters', `${labels(`word.${matters.is}`)}, ${format.share(matters.share)}`)]),
  ];
}

function pulpPoints(view: View, ids: readonly EvidenceId[], fallback: number): Point[] {
  return ids.flatMap((id): Point[] => {
    const item = view.item(id);
    return item?.kind === 'pulp'
      ? [[knownMilliseconds(item.time) ?? fallback, celsius(item.temperature)]]
      : [];
  });
}

function drawingOf(view: View, result: ProductResult): string | undefined {
  const { delivery } = view.input.state;
  const line = delivery.lines.find(({ id }) => id === result.line);
  const log = logNamed(view.input.logs, result);
  const { window, loading, arrival } = result;
  if (line === undefined || log === undefined || window === undefined) return undefined;
  const group = view.input.assessment.pulps.find((one) => one.line === result.line && one.does === 'load');
  if (group === undefined || loading === undefined || arrival === undefined) return undefined;
  const course = productCourse(result, line, log, { delivery, loading: group });
  if (course === undefined) return undefined;
  const [channel = 'return-air'] = result.assumptions.channels;
  const gap =
    view.input.assessment.temperatures.find(
      (one) => one.log === result.log && one.compartment === result.compartment,
    )?.gapLimitSeconds ?? 1800;
  return envelopeChart(
    {
      course,
      air: curves(log.times, log.channels[channel] ?? [], window, gap * 1000, 500),
      airName: view.labels(`channel.${channel}`),
      loading: pulpPoints(view, loading.evidence, window.from),
      arrival: pulpPoints(view, arrival.evidence, window.to),
      zone: view.startZone,
      ...omitUndefined({ otherZone: sameLocalTime(view, window.from, window.to) ? undefined : view.endZone }),
    },
    view.format,
    view.labels,
  );
}

function altOf(view: View, result: ProductResult): string {
  const degrees = (value: number | undefined) =>
    value === undefined ? undefined : ({ is: 'temperature', celsius: value } as const);
  return wordsOf(
    view.words.line('alt-envelope', {
      line: { is: 'line', line: result.line },
      loadMin: degrees(result.loading?.min),
      loadMax: degrees(result.loading?.max),
      low: degrees(result.asMeasured?.low),
      high: degrees(result.asMeasured?.high),
      instructedLow: degrees(result.asInstructed?.low),
      instructedHigh: degrees(result.asInstructed?.high),
      deliveryMin: degrees(result.arrival?.min),
      deliveryMax: degrees(result.arrival?.max),
      verdict: view.labels(`product.${result.verdict}`),
    }),
  );
}

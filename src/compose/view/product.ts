import { logNamed } from '../../core/assess/logs/compartments.js';
import { envelopeCurve } from '../../core/assess/product/curve.js';
import { envelopeChart } from '../../core/charts/envelope.js';
import { curves, type Point } from '../../core/charts/reduce.js';
import type { EvidenceId } from '../../core/model/evidence.js';
import { omitUndefined } from '../../core/model/omit-undefined.js';
import type { ProductResult } from '../../core/model/results.js';
import { celsius } from '../../core/model/temperature.js';
import { knownMilliseconds } from '../../core/model/time.js';
import { type Block, type Cell, type Fact, plain, wordsOf } from '../../core/words/blocks.js';
import { cell, exhibitLinks, type View } from './context.js';
import type { DrawnSection } from './drawn-section.js';
import { sameLocalTime } from './glance.js';
import { sourceText } from './margins.js';
import { groupName } from './pulps.js';
import { formatRange } from './range.js';
import { column } from './tables.js';

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

/** Consistency of loading pulps, logged air and arrival pulps: a table of the verdicts, a drawing for each line. */
function consistencyBlocks(view: View): { blocks: Block[]; drawings: Map<string, string> } {
  const { labels, words } = view;
  const results = view.input.assessment.product ?? [];
  const drawings = new Map<string, string>();
  if (results.length === 0) return { blocks: [], drawings };
  const blocks: Block[] = [
    { is: 'heading', level: 2, text: labels('sub.product') },
    ...words.blocks('sections/product', {
      tolerance: { is: 'difference', kelvin: results[0]?.toleranceKelvin ?? 0 },
    }),
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

const ends = (range: { min: number; max: number } | undefined) =>
  range === undefined ? undefined : { low: range.min, high: range.max };

function verdicts(view: View, results: readonly ProductResult[]): Block {
  const { labels, format } = view;
  return {
    is: 'table',
    columns: [
      column(view, 'line', 1.8),
      column(view, 'loading-pulps', 2),
      column(view, 'plausible', 2),
      column(view, 'arrival-pulps', 2),
      column(view, 'what', 2.4),
      column(view, 'source', 0.8),
    ],
    rows: results.map((one): Cell[] => {
      const verdict = labels(`product.${one.why ?? one.verdict}`);
      const beyond =
        (one.beyondKelvin ?? 0) > 0 ? `${verdict} ${format.difference(one.beyondKelvin ?? 0)}` : verdict;
      return [
        cell(view.names.line(one.line)),
        cell(formatRange(view, ends(one.loading))),
        cell(formatRange(view, one.envelope)),
        cell(formatRange(view, ends(one.arrival))),
        one.verdict === 'above' || one.verdict === 'below'
          ? { is: 'alert', of: plain(beyond) }
          : cell(beyond),
        exhibitLinks(view, [one.log]),
      ];
    }),
  };
}

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
    fact('air', assumed.channels.map((name) => labels(`channel.${name}`).toLowerCase()).join(', ')),
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
      : [fact('matters', `${labels(`word.${matters.is}`)}, ${format.difference(matters.kelvin)}`)]),
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
  const curve = envelopeCurve(result, line, log);
  if (curve === undefined || loading === undefined || arrival === undefined) return undefined;
  const [channel = 'return-air'] = result.assumptions.channels;
  const gap =
    view.input.assessment.temperatures.find(
      (one) => one.log === result.log && one.compartment === result.compartment,
    )?.gapLimitSeconds ?? 1800;
  return envelopeChart(
    {
      curve,
      air: curves(log.times, log.channels[channel] ?? [], window, gap * 1000, 500),
      airName: view.labels(`channel.${channel}`),
      loading: pulpPoints(view, loading.evidence, window.from),
      arrival: pulpPoints(view, arrival.evidence, window.to),
      tolerance: result.toleranceKelvin,
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
      low: degrees(result.envelope?.low),
      high: degrees(result.envelope?.high),
      deliveryMin: degrees(result.arrival?.min),
      deliveryMax: degrees(result.arrival?.max),
      verdict: view.labels(`product.${result.verdict}`),
    }),
  );
}

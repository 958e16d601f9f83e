import type { Line } from '../../model/delivery.js';
import type { Finding } from '../../model/results.js';
import { givesMuchEthylene, harmedByEthylene, recommendedHumidities } from '../../reference/company.js';
import { findGoods } from '../../reference/goods.js';
import { recommendedTemperatures } from '../../reference/limits.js';
import type { PublishedValue } from '../../reference/published-values.js';
import type { TemperatureRange } from '../../reference/value-cell.js';
import { legsOf } from '../legs.js';
import { isSecondary, publishedHumidities, publishedTemperatures } from '../published-limits.js';
import { type FindingContext, finding, lineRef } from './make.js';

const BY = 'lines on board together, by what each source recommends';
/** Tolerance for rounding between °F and °C in published ranges. Kelvin. */
const ROUNDED = 0.06;
/**
 * Goods that need drier air than this, percent, and goods that need damper air harm each other; HB 668 groups 2 and
 * 3.
 */
const DRY_AT_MOST = 75;
const MOIST_AT_LEAST = 85;

interface Goods {
  line: Line;
  key: string;
}

/**
 * Findings on lines in one trailer that no source would put together. Goods that the library lacks are not judged,
 * and what sources do not agree on is left out.
 */
export function mixingFindings(context: FindingContext): Finding[] {
  return pairs(context).flatMap(([a, b]) => [
    ...temperatures(a, b),
    ...ethylene(context, a, b),
    ...ethylene(context, b, a),
    ...moisture(a, b),
    ...moisture(b, a),
  ]);
}

/** Every pair of different goods aboard together on some leg, once. */
function pairs({ state }: FindingContext): [Goods, Goods][] {
  const legs = legsOf(state.delivery.stops, state.delivery.lines);
  const goods = state.delivery.lines.flatMap((line): Goods[] => {
    const key = findGoods(line.goods)?.key;
    return key === undefined ? [] : [{ line, key }];
  });
  return goods.flatMap((a, i) =>
    goods
      .slice(i + 1)
      .filter((b) => a.key !== b.key)
      // A bulkhead keeps the air of two compartments apart.
      .filter((b) => a.line.compartment === b.line.compartment)
      .filter((b) => legs.some(({ lines }) => lines.includes(a.line) && lines.includes(b.line)))
      .map((b): [Goods, Goods] => [a, b]),
  );
}

/** Lines whose recommended temperatures do not meet, whichever sources are taken. */
function temperatures(a: Goods, b: Goods): Finding[] {
  const [first, second] = [recommendedTemperatures(a.key), recommendedTemperatures(b.key)];
  const apart = (one: TemperatureRange, other: TemperatureRange) =>
    Math.max(
      (one.low ?? Number.NEGATIVE_INFINITY) - (other.high ?? Number.POSITIVE_INFINITY),
      (other.low ?? Number.NEGATIVE_INFINITY) - (one.high ?? Number.POSITIVE_INFINITY),
    ) > ROUNDED;
  if (first.length === 0 || second.length === 0) return [];
  if (!first.every((one) => second.every((other) => apart(one, other)))) return [];
  const [firstPublished, secondPublished] = [publishedTemperatures(first), publishedTemperatures(second)];
  return [
    finding('mixed-temperatures', BY, [], {
      first: lineRef(a.line.id),
      firstPublished,
      second: lineRef(b.line.id),
      secondPublished,
      secondary: isSecondary([...firstPublished.by, ...secondPublished.by]),
    }),
  ];
}

function ethylene(context: FindingContext, giver: Goods, feeler: Goods): Finding[] {
  const [gives, feels] = [givesMuchEthylene(giver.key), harmedByEthylene(feeler.key)];
  if (gives.length === 0 || feels.length === 0) return [];
  const beside = neighbours(context, giver.line, feeler.line);
  return [
    finding('mixed-ethylene', BY, beside, {
      giver: lineRef(giver.line.id),
      giverSources: namesOf(gives),
      feeler: lineRef(feeler.line.id),
      feelerSources: namesOf(feels),
      beside: beside.length > 0,
      secondary: [...gives, ...feels].some(({ source }) => source.status === 'secondary'),
    }),
  ];
}

const namesOf = (values: readonly PublishedValue[]) =>
  [...new Set(values.map(({ source }) => source.name))].join('; ');

/** Evidence of rows of one line beside rows of the other. */
function neighbours({ loading }: FindingContext, a: Line, b: Line) {
  const rows = loading?.rows ?? [];
  return rows.flatMap((row, i) => {
    const next = rows[i + 1];
    if (next === undefined || next.row !== row.row + 1) return [];
    const lines = [row.line, next.line];
    return lines.includes(a.id) && lines.includes(b.id) ? [row.evidence, next.evidence] : [];
  });
}

/** Goods that every source wants dry beside goods that every source wants damp. */
function moisture(dry: Goods, moist: Goods): Finding[] {
  const [wantsDry, wantsMoist] = [recommendedHumidities(dry.key), recommendedHumidities(moist.key)];
  if (wantsDry.length === 0 || wantsMoist.length === 0) return [];
  if (wantsDry.some(({ high }) => high > DRY_AT_MOST)) return [];
  if (wantsMoist.some(({ low }) => low < MOIST_AT_LEAST)) return [];
  const [dryPublished, moistPublished] = [publishedHumidities(wantsDry), publishedHumidities(wantsMoist)];
  return [
    finding('mixed-moisture', BY, [], {
      dry: lineRef(dry.line.id),
      dryPublished,
      moist: lineRef(moist.line.id),
      moistPublished,
      iced: moist.line.iced,
      secondary: isSecondary([...dryPublished.by, ...moistPublished.by]),
    }),
  ];
}

import type { Line } from '../../model/delivery.js';
import { omitUndefined } from '../../model/omit-undefined.js';
import type { Finding } from '../../model/results.js';
import { type Compatibility, compatibilityOf } from '../../reference/compatibility.js';
import { cite, findProduce, type Produce } from '../../reference/produce.js';
import { sources } from '../../reference/sources.js';
import { legsOf } from '../legs.js';
import { type FindingContext, finding, lineRef, share, temperature } from './make.js';

const BY = 'lines on board together, by the published tables';
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
  produce: Produce;
  company?: Compatibility;
}

/**
 * Findings on lines in one trailer that are incompatible by the published tables. Goods that the tables lack are
 * not judged.
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
    const produce = findProduce(line.goods);
    if (produce === undefined) return [];
    const company = compatibilityOf(produce.key);
    return [{ line, produce, ...omitUndefined({ company }) }];
  });
  return goods.flatMap((a, i) =>
    goods
      .slice(i + 1)
      .filter((b) => a.produce.key !== b.produce.key)
      .filter((b) => legs.some(({ lines }) => lines.includes(a.line) && lines.includes(b.line)))
      .map((b): [Goods, Goods] => [a, b]),
  );
}

function temperatures(a: Goods, b: Goods): Finding[] {
  const [first, second] = [a.produce.range, b.produce.range];
  const apart = Math.max(first.value.low - second.value.high, second.value.low - first.value.high);
  if (apart <= ROUNDED) return [];
  return [
    finding('mixed-temperatures', `${BY}: ${cite(first)}; ${cite(second)}`, [], {
      first: lineRef(a.line.id),
      firstLow: temperature(first.value.low),
      firstHigh: temperature(first.value.high),
      second: lineRef(b.line.id),
      secondLow: temperature(second.value.low),
      secondHigh: temperature(second.value.high),
      fromMemory: first.basis === 'from memory' || second.basis === 'from memory',
    }),
  ];
}

function ethylene(context: FindingContext, giver: Goods, feeler: Goods): Finding[] {
  const gives = giver.company?.gives;
  if (gives !== 'H' && gives !== 'VH') return [];
  const feels = feeler.company?.feels;
  if (feels !== 'H' && feels !== 'VH') return [];
  const keys = [...new Set([giver.company, feeler.company].flatMap((one) => one?.ethyleneSources ?? []))];
  return [
    finding('mixed-ethylene', BY, neighbours(context, giver.line, feeler.line), {
      giver: lineRef(giver.line.id),
      feeler: lineRef(feeler.line.id),
      beside: neighbours(context, giver.line, feeler.line).length > 0,
      source: keys.map((key) => sources[key]).join('; '),
      fromMemory: keys.includes('M'),
    }),
  ];
}

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

function moisture(dry: Goods, moist: Goods): Finding[] {
  const [wantsDry, wantsMoist] = [dry.company?.humidity, moist.company?.humidity];
  if (wantsDry === undefined || wantsMoist === undefined) return [];
  if (wantsDry.high > DRY_AT_MOST || wantsMoist.low < MOIST_AT_LEAST) return [];
  const keys = [
    ...new Set([...(dry.company?.humiditySources ?? []), ...(moist.company?.humiditySources ?? [])]),
  ];
  return [
    finding('mixed-moisture', BY, [], {
      dry: lineRef(dry.line.id),
      dryHigh: share(wantsDry.high / 100),
      moist: lineRef(moist.line.id),
      moistLow: share(wantsMoist.low / 100),
      iced: moist.line.iced,
      source: keys.map((key) => sources[key]).join('; '),
    }),
  ];
}

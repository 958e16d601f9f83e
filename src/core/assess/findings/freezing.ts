import type { Finding } from '../../model/results.js';
import { findGoods } from '../../reference/goods.js';
import { freezingPoints } from '../../reference/limits.js';
import { instructionFreezes } from '../instruction-freezes.js';
import { judgeAgainst } from '../measurement/uncertainty.js';
import { isSecondary, publishedLimit, publishedTemperatures } from '../published-limits.js';
import { bestEstimate } from '../pulp-pairs.js';
import { difference, type FindingContext, finding, lineRef, stopRef, temperature } from './make.js';

/**
 * Pulps at delivery below the freezing points of the goods: against the carrier where one is clearly below all of them,
 * else open, for freezing goods stay at their freezing point, which thermometers seldom tell from just above it. Where
 * the bill itself instructs to freeze them, the condition is named and open: its cause is the instruction.
 */
export function frozenFindings(context: FindingContext): Finding[] {
  return context.pulps.flatMap((group) => {
    const line = context.state.delivery.lines.find(({ id }) => id === group.line);
    const goods = line === undefined ? undefined : findGoods(line.goods);
    const points = freezingPoints(goods?.key ?? '');
    const [highest, lowest] = [points[0], points.at(-1)];
    if (group.does !== 'unload' || goods === undefined || highest === undefined || lowest === undefined)
      return [];
    const limits = { low: lowest.low ?? lowest.high, high: Number.POSITIVE_INFINITY };
    const frozen = group.readings.filter(
      (one) => judgeAgainst(bestEstimate(one), one.uncertainty.guardKelvin, limits) === 'below',
    );
    const near = group.readings.filter((one) => !frozen.includes(one) && bestEstimate(one) <= highest.high);
    if (frozen.length + near.length === 0) return [];
    const instructed = instructionFreezes(line);
    return [
      finding(
        'pulps-at-delivery-frozen',
        'pulps against the published freezing points',
        group.readings.map((one) => one.evidence),
        {
          line: lineRef(group.line),
          stop: stopRef(group.stop),
          count: group.count,
          min: temperature(group.min),
          max: temperature(group.max),
          guard: difference(Math.max(...group.readings.map(({ uncertainty }) => uncertainty.guardKelvin))),
          goods: goods.name,
          frozen: frozen.length,
          near: near.length,
          instructed,
          published: publishedTemperatures(points),
          secondary: isSecondary(points.map(publishedLimit)),
        },
        frozen.length > 0 && !instructed ? 'hurts' : 'open',
      ),
    ];
  });
}

import type { Line } from '../../model/delivery.js';
import { metres } from '../../model/length.js';
import type { Applies } from '../../model/rule-set.js';
import { celsius } from '../../model/temperature.js';
import { findGoods } from '../../reference/goods.js';
import { recommendedTemperatures } from '../../reference/limits.js';
import { ROUNDING } from '../bands.js';
import { claimsAt } from '../claim/terms.js';
import { hasHappened } from '../milestones.js';
import { isRefused } from '../outcomes.js';
import type { IndexedContext } from './context.js';
import { isInFuture } from './window.js';

type Conditions = Omit<Applies, 'any' | 'none'>;

/**
 * The lines that a rule applies to; undefined when it does not apply to this delivery. Equipment that the delivery
 * does not describe is assumed present: a rule on the air chute applies until the delivery says that there is none.
 */
export function linesFor(applies: Applies | undefined, context: IndexedContext): readonly Line[] | undefined {
  const { lines } = context.state.delivery;
  if (applies === undefined) return lines;
  const { any, none, ...own } = applies;
  if (none?.some((one) => chosen(one, context, lines).length > 0) === true) return undefined;
  const wanted = chosen(own, context, lines);
  const found =
    any === undefined
      ? wanted
      : wanted.filter((line) => any.some((one) => chosen(one, context, wanted).includes(line)));
  return found.length === 0 ? undefined : found;
}

function chosen(conditions: Conditions, context: IndexedContext, among: readonly Line[]): readonly Line[] {
  if (!suits(conditions, context)) return [];
  return among.filter((line) => fits(conditions, line) && concerns(conditions, line, context));
}

/** Whether the conditions on the whole delivery hold. */
function suits(conditions: Conditions, context: IndexedContext): boolean {
  const { lines, stops, equipment } = context.state.delivery;
  const { trailer } = equipment;
  const facts: [wanted: boolean | undefined, is: boolean][] = [
    [conditions.airChute, trailer.airChute ?? true],
    [conditions.drains, trailer.drains !== 'none'],
    [conditions.claim, conditions.claim !== undefined && claimRecorded(context)],
  ];
  if (facts.some(([wanted, is]) => wanted !== undefined && wanted !== is)) return false;
  if (conditions.happened !== undefined && !hasHappened(context.milestones, conditions.happened))
    return false;
  const stopsThat = (does: 'load' | 'unload') => stops.filter((stop) => stop.does === does).length;
  return (
    inRange(conditions.loadingStops, stopsThat('load')) &&
    inRange(conditions.unloadingStops, stopsThat('unload')) &&
    inRange(conditions.lines, lines.length) &&
    inRange(conditions.kindsOfGoods, new Set(lines.map((line) => line.goods.toLowerCase())).size)
  );
}

/** A rule for refused goods is for the lines of which some are refused still. */
function concerns({ happened }: Conditions, line: Line, { outcomes }: IndexedContext): boolean {
  return happened !== 'refused' || outcomes.some((one) => one.line === line.id && isRefused(one));
}

/** Whether the conditions on lines hold together for one line. */
function fits(conditions: Conditions, line: Line): boolean {
  const { iced, temperatureControlled, temperatureRecommended, goods, setPointAtMost, setPointAtLeast } =
    conditions;
  const { run, stackHeightAtLeast } = conditions;
  const asked = line.instruction === undefined ? undefined : celsius(line.instruction.setPoint);
  return [
    iced === undefined || line.iced === iced,
    temperatureControlled === undefined || (line.instruction !== undefined) === temperatureControlled,
    temperatureRecommended === undefined || isRecommendedFor(line) === temperatureRecommended,
    goods === undefined || goods.some((name) => sameGoods(name, line.goods)),
    setPointAtMost === undefined || (asked !== undefined && asked <= celsius(setPointAtMost) + ROUNDING),
    setPointAtLeast === undefined || (asked !== undefined && asked >= celsius(setPointAtLeast) - ROUNDING),
    run === undefined || (line.instruction?.run ?? 'silent') === run,
    stackHeightAtLeast === undefined ||
      (line.stackHeight !== undefined && metres(line.stackHeight) >= metres(stackHeightAtLeast) - 1e-9),
  ].every(Boolean);
}

const sameGoods = (name: string, goods: string) =>
  name.toLowerCase() === goods.toLowerCase() ||
  (findGoods(name) !== undefined && findGoods(name)?.key === findGoods(goods)?.key);

/** Whether some source recommends a temperature for the goods of a line. */
const isRecommendedFor = ({ goods }: Line) => recommendedTemperatures(findGoods(goods)?.key ?? '').length > 0;

const claimRecorded = (context: IndexedContext) =>
  claimsAt(context.state, context.now).length > 0 ||
  context.evidence
    .showing(['claim-letter', 'claim-acknowledgement', 'claim-answer'])
    .some((item) => !isInFuture(context, item));

const inRange = (
  range: { atLeast?: number | undefined; atMost?: number | undefined } | undefined,
  n: number,
) => range === undefined || (n >= (range.atLeast ?? 0) && n <= (range.atMost ?? Number.POSITIVE_INFINITY));

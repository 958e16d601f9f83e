import type { Line } from '../../../model/delivery.js';
import type { Shortfall } from '../../../model/results.js';
import type { SimpleNeed } from '../../../model/rule-set.js';
import { celsius } from '../../../model/temperature.js';
import { findGoods } from '../../../reference/goods.js';
import { compareWithSources, recommendedTemperatures } from '../../../reference/limits.js';
import { bandsOf, commonBand } from '../../bands.js';
import { publishedTemperatures } from '../../published-limits.js';
import type { RuleContext } from '../context.js';
import { shortfall } from '../shortfalls.js';
import { emptyVerdict, type NeedVerdict } from '../verdict.js';

type InstructionNeed = Extract<SimpleNeed, { instruction: unknown }>;

/** Temperature instructions of the bill, which is the evidence for and against. */
export function instructionVerdict(context: RuleContext, need: InstructionNeed): NeedVerdict {
  const lines = context.scope.line === undefined ? context.lines : [context.scope.line];
  const bills = context.evidence
    .showing(['bill-of-lading'])
    .filter((item) => item.withheld === undefined)
    .map((item) => item.evidence);
  const silent = lines.filter((line) => line.instruction === undefined);
  const stated = lines.length - silent.length;
  const counted = stated > 0 ? bills : [];
  const wrong = wrongOf(context, need, lines);
  if (wrong.length > 0)
    return { ...emptyVerdict(), outcome: 'contradicted', counted, against: counted, lacking: wrong };
  const lacking = [
    ...silent.map((line) => shortfall('no-instruction', {}, { line })),
    ...(need.instruction === 'in-published-range' ? notInTable(lines) : []),
  ];
  const outcome = lacking.length === 0 ? 'met' : stated > 0 ? 'short' : 'missing';
  return { ...emptyVerdict(), outcome, counted, lacking };
}

function wrongOf(context: RuleContext, need: InstructionNeed, lines: readonly Line[]): Shortfall[] {
  switch (need.instruction) {
    case 'on-the-bill':
      return [];
    case 'one-for-all': {
      const bands = bandsOf(lines, context.ruleSet);
      return bands.length > 1 && commonBand(bands) === undefined
        ? [shortfall('no-common-temperature', {})]
        : [];
    }
    case 'in-published-range':
      return lines.flatMap(outOfRange);
  }
}

const rangesFor = (line: Line) => recommendedTemperatures(findGoods(line.goods)?.key ?? '');

/** An instruction that no source recommends; one that some do is for the findings to weigh. */
function outOfRange(line: Line): Shortfall[] {
  const ranges = rangesFor(line);
  if (ranges.length === 0 || line.instruction === undefined) return [];
  const asked = celsius(line.instruction.setPoint);
  if (compareWithSources(ranges, asked).within.length > 0) return [];
  return [
    shortfall(
      'not-in-published-range',
      { setPoint: { is: 'temperature', celsius: asked }, published: publishedTemperatures(ranges) },
      { line },
    ),
  ];
}

const notInTable = (lines: readonly Line[]): Shortfall[] =>
  lines
    .filter((line) => line.instruction !== undefined && rangesFor(line).length === 0)
    .map((line) => shortfall('not-in-table', {}, { line }));

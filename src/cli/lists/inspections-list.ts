import type { Delivery } from '../../core/model/delivery.js';
import type { GoodDelivery, InspectionResult, PercentRange } from '../../core/model/results.js';
import type { Format } from '../../core/words/format.js';
import type { Labels } from '../../core/words/labels.js';
import { plainSpaces } from '../../core/words/spaces.js';
import { drawingWords } from '../../jobs/drawing-words.js';
import type { Output } from '../output.js';
import { tableLines } from '../table.js';

/** Each lot: its defects, how it compares, and what a reader must know. */
export async function printInspections(
  output: Output,
  results: readonly InspectionResult[],
  show: Delivery['show'],
  causes: boolean,
): Promise<void> {
  const { format, labels } = await drawingWords({ ...show, language: 'en' });
  if (results.length === 0) output.line('No inspection certificate is recorded: dossier record inspection');
  const print = (rows: readonly (readonly string[])[]) => {
    for (const line of tableLines(
      rows.map((row) => row.map(plainSpaces)),
      output.width,
    ))
      output.line(line);
  };
  for (const one of results) {
    output.line();
    print([[headOf(one, format)]]);
    print(one.defects.map((defect) => ['', defectText(defect, format, labels)]));
    print(comparisonRows(one.goodDelivery, format, labels).map((row) => ['', ...row]));
    print(
      one.remarks.map(({ is, evidence, percent }) => [
        '',
        `${labels(`good-delivery.remark-${is}`).replace('PERCENT', percent === undefined ? '' : percentIn(format, percent))} (${evidence.join(', ')})`,
      ]),
    );
    if (causes) print(causeRows(one, labels));
  }
}

function headOf(one: InspectionResult, format: Format): string {
  const { lot, line, stop, at, zone, evidence, transitSeconds, afterArrivalSeconds } = one;
  return [
    `lot ${lot}`,
    ...[line, stop].filter((part) => part !== undefined),
    ...(at === undefined || zone === undefined ? [] : [format.time(at, zone)]),
    ...(transitSeconds === undefined ? [] : [`${format.number(transitSeconds / 86_400, 1)} days in transit`]),
    ...(afterArrivalSeconds === undefined || afterArrivalSeconds < 0
      ? []
      : [`${format.duration(afterArrivalSeconds)} after arrival`]),
    evidence.join(' '),
  ].join(', ');
}

function defectText(
  { name, percent, serious, nature }: InspectionResult['defects'][number],
  format: Format,
  labels: Labels,
): string {
  const beside = [
    ...(serious === undefined ? [] : [`${percentIn(format, serious)} serious`]),
    nature === 'not-known' ? 'condition or permanent' : labels(`inspection.nature-${nature}`),
  ];
  return `${name} ${percentIn(format, percent)} (${beside.join(', ')})`;
}

function comparisonRows(delivery: GoodDelivery, format: Format, labels: Labels): string[][] {
  if (delivery.is === 'not-compared')
    return [[`not compared: ${labels(`good-delivery.why-${delivery.why}`)}`]];
  const rule =
    delivery.rule === 'agreed'
      ? labels('good-delivery.rule-agreed')
      : `7 CFR ${delivery.paragraph}${delivery.ifFob ? ', if sold f.o.b.' : ''}: ${labels(`good-delivery.rule-${delivery.rule}`)}`;
  return [
    [`${labels(`good-delivery.${delivery.answer}`)}: ${rule}`],
    ...delivery.answers.map(({ of, found, limit, answer }) => [
      `${labels(`good-delivery.of-${of}`)} ${rangeIn(format, found)}, at most ${rangeIn(format, limit)}: ${labels(`good-delivery.${answer}`)}`,
    ]),
  ];
}

function causeRows({ defects }: InspectionResult, labels: Labels): string[][] {
  const rows = defects.flatMap(({ name, causes }) =>
    causes.map(({ cause, quote, name: source, address }) => [
      '',
      `${name}, usually from ${labels(`defect-cause.${cause}`)}: “${quote}” (${source}, ${address})`,
    ]),
  );
  return rows.length === 0
    ? rows
    : [...rows, ['', 'General texts; none says what caused the damage of this load.']];
}

const percentIn = ({ number }: Format, value: number): string =>
  `${number(value, Number.isInteger(value) ? 0 : Number.isInteger(value * 10) ? 1 : 2)} %`;

const rangeIn = (format: Format, { low, high }: PercentRange): string =>
  low === high ? percentIn(format, low) : `${percentIn(format, low)} to ${percentIn(format, high)}`;

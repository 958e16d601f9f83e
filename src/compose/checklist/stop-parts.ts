import type { Line, Stop } from '../../core/model/delivery.js';
import type { ChecklistBox, ChecklistPart, ChecklistRow, InspectionPart, OutcomePart } from './box.js';
import { boxes, type Numbered } from './rows.js';

/** The letter of a line on the form, in the order of the bill. */
export function lineLetter(line: string, lines: readonly Line[]): string {
  return String.fromCharCode(65 + (lines.findIndex(({ id }) => id === line) % 26));
}

const OUTCOME: readonly OutcomePart[] = ['accepted', 'refused', 'short', 'damaged', 'why'];

/** What became of each line at its stop. */
export function outcomes({ id: stop }: Stop, lines: readonly Line[], box: Numbered): ChecklistPart[] {
  const here = lines.filter(({ to }) => to === stop);
  if (here.length === 0) return [];
  const rows = here.map(({ id: line }) => ({
    line,
    letter: lineLetter(line, lines),
    boxes: OUTCOME.map((part) => box({ is: 'outcome', part, line, stop })),
  }));
  return [{ is: 'outcome', stop, rows: [{ is: 'grid', columns: OUTCOME, rows }] }];
}

/** Who at the receiver said so, to whom and how: a word to the driver is no notice to the consignor. */
const outcomeSaid = (stop: string, box: Numbered): ChecklistRow =>
  boxes(
    [box({ is: 'outcome-said', part: 'by', stop }), 1.6],
    [box({ is: 'outcome-said', part: 'told', stop }), 1.6],
    [box({ is: 'outcome-said', part: 'told-name', stop }), 1.2],
    [box({ is: 'outcome-said', part: 'how', stop }), 1.6],
  );

/** Numbered after the outcomes of all stops, so that those keep their numbers. */
export const withSayers = (parts: readonly ChecklistPart[], box: Numbered): ChecklistPart[] =>
  parts.map((part) => ({
    ...part,
    rows: [...part.rows, ...(part.stop === undefined ? [] : [outcomeSaid(part.stop, box)])],
  }));

/** What an inspection certificate states of one lot. */
export function inspection({ id: stop }: Stop, box: Numbered): ChecklistPart {
  const part = (name: InspectionPart, width: number): [ChecklistBox, number] => [
    box({ is: 'inspection', part: name, stop }),
    width,
  ];
  return {
    is: 'inspection',
    stop,
    rows: [
      boxes(
        part('lot', 1.4),
        part('line', 0.6),
        part('count', 1.2),
        part('samples', 0.9),
        part('certificate', 1.3),
      ),
      boxes(part('at', 0.8), part('inspector', 1.8), part('requested-by', 1.8), part('requested-at', 0.9)),
      boxes(part('low', 0.8), part('high', 0.8), part('defects', 4)),
    ],
  };
}

/** What is written on the bill of lading against clean receipt. */
export const exceptions = (stop: string, box: Numbered): ChecklistPart => ({
  is: 'exception',
  stop,
  rows: [
    boxes(
      [box({ is: 'exception', part: 'words', stop }), 3.4],
      [box({ is: 'exception', part: 'line', stop }), 0.7],
      [box({ is: 'exception', part: 'signed', stop }), 1.6],
    ),
  ],
});

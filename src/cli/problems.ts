import type { Problem } from '../core/model/error.js';
import { escapeControls, type Output } from './output.js';

/**
 * `photos/IMG_7.jpg, row 12, column value: what is wrong`, followed by lines with the remedy, the ways in which the first
 * rows can be read, and the other problems there.
 */
export function describeProblem(problem: Problem): string[] {
  const { file, row, column, field } = problem.where;
  const place = [
    file,
    row === undefined ? undefined : `row ${row}`,
    column === undefined ? undefined : `column ${column}`,
    field,
  ].filter((part) => part !== undefined);
  const lead = place.length === 0 ? '' : `${place.join(', ')}: `;
  const first = escapeControls(`${lead}${problem.message}`);
  const fix = problem.fix === undefined ? [] : [`  ${escapeControls(problem.fix)}`];
  const ways = (problem.ways ?? []).flatMap(({ answer, rows }) => [
    `  ${escapeControls(answer)}`,
    ...rows.map((row) => `      ${escapeControls(row)}`),
  ]);
  return [
    first,
    ...fix,
    ...ways,
    ...(problem.others ?? []).map((other) => `  also ${escapeControls(other)}`),
  ];
}

export function printProblem(output: Output, problem: Problem): void {
  const [first = '', ...rest] = describeProblem(problem);
  output.note(output.style('red', first));
  for (const line of rest) output.note(line);
}

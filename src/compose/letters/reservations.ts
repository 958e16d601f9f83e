import type { PulpGroup } from '../../core/model/results.js';
import { celsius } from '../../core/model/temperature.js';
import { escapeMarkdown } from '../../core/words/escape.js';
import { MarkdownText } from '../../core/words/facts.js';
import type { LetterInput } from './input.js';
import type { LetterView } from './view.js';

/** Short exceptions for the bill: pulps out of range before loading, and a count that differs. */
export function reservations(view: LetterView<LetterInput>): {
  reservations: MarkdownText[];
  reservedFrom: MarkdownText[];
} {
  const { findings, pulps } = view.input.assessment;
  const { lines } = view.input.state.delivery;
  const outside = ({ does, band, min, max, readings }: PulpGroup) =>
    does === 'load' &&
    band !== undefined &&
    (min < band.low || max > band.high) &&
    readings.some(({ evidence }) => view.number(evidence) !== undefined);
  const groups = pulps.filter(outside);
  const counts = findings.filter(
    ({ id, evidence }) => id === 'pallets-noted-differ' && view.source(evidence).text !== '',
  );
  const pulpWords = (group: PulpGroup) => {
    const asked = lines.find(({ id }) => id === group.line)?.instruction?.setPoint;
    return view.words.markdown('letters/reservation-pulps', {
      line: { is: 'line', line: group.line },
      count: group.count,
      min: { is: 'temperature', celsius: group.min },
      max: { is: 'temperature', celsius: group.max },
      asked: asked === undefined ? undefined : { is: 'temperature', celsius: celsius(asked) },
    });
  };
  return {
    reservations: [
      ...groups.map(pulpWords),
      ...counts.map(({ facts }) => view.words.markdown('letters/reservation-pallets', facts)),
    ].map((words) => new MarkdownText(words.trim())),
    reservedFrom: groups.map(({ line, readings }) => {
      const name = `${view.names.line(line)}: ${view.labels('kind.pulp')}`;
      return new MarkdownText(
        `${escapeMarkdown(name)}${view.source(readings.map(({ evidence }) => evidence))}`,
      );
    }),
  };
}

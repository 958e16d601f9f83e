import type { Line } from '../../../core/model/delivery.js';
import { celsius, kelvin } from '../../../core/model/temperature.js';
import type { Fact, Inline } from '../../../core/words/blocks.js';
import { exhibitLinks, type View } from '../context.js';
import { joined, withExhibits } from './inlines.js';

/** What was instructed for the lines, and what every other source says the unit was to run or ran; each with its exhibits. */
export function setPointFact(view: View): Fact[] {
  const { labels, format, input } = view;
  const { words } = input.assessment.setPoints;
  const others = words.filter(({ source }) => source !== 'bill');
  const keys = [...new Set(others.map(({ source, celsius: value }) => `${source} ${format.short(value)}`))];
  const parts = [
    ...instructions(view),
    ...keys.map((key) => {
      const same = others.filter((one) => `${one.source} ${format.short(one.celsius)}` === key);
      const [first] = same;
      const said =
        first === undefined
          ? ''
          : `${labels(`set-point-source.${first.source}`)} ${format.short(first.celsius)}`;
      return withExhibits(said, exhibitLinks(view, [...new Set(same.map(({ evidence }) => evidence))], 3));
    }),
  ];
  return parts.length === 0 ? [] : [{ label: labels('cover.set-points'), value: joined(parts) }];
}

/** The instruction of all lines once where it is one, else line by line. */
function instructions(view: View): Inline[][] {
  const { labels, names, input } = view;
  const { lines } = input.state.delivery;
  const bills = input.assessment.setPoints.words.filter(({ source }) => source === 'bill');
  const links = exhibitLinks(view, [...new Set(bills.map(({ evidence }) => evidence))], 3);
  const told = new Map<string, Line[]>();
  for (const line of lines) {
    const words = instructionWords(view, line);
    if (words !== undefined) told.set(words, [...(told.get(words) ?? []), line]);
  }
  return [...told].map(([words, of]) => {
    const whose = of.length === lines.length ? '' : `${of.map(({ id }) => names.line(id)).join(', ')}: `;
    return withExhibits(`${labels('set-point-source.bill')} ${whose}${words}`, links);
  });
}

function instructionWords({ labels, format }: View, { instruction }: Line): string | undefined {
  if (instruction === undefined) return undefined;
  const { setPoint, tolerance, run } = instruction;
  return [
    `${format.temperature(celsius(setPoint))}${tolerance === undefined ? '' : ` ± ${format.difference(kelvin(tolerance))}`}`,
    ...(run === undefined ? [] : [labels(`run.${run}`)]),
  ].join(', ');
}

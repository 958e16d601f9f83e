import { escapeMarkdown } from './escape.js';
import { ShownFact } from './facts.js';
import type { Labels } from './labels.js';
import type { Helper, Helpers } from './template.js';

export interface HelperWords {
  labels: Labels;
  /** The words for a place that a person fills in by hand; asked once for each such place that is printed. */
  blank?: (id: string) => string;
  /** So many exhibits of a sentence are named, the others counted; four if not given. */
  mostExhibits?: number;
}

const raw = (value: unknown): string => (value instanceof ShownFact ? value.raw : String(value ?? ''));

/** What templates may do with facts beside printing them; `templates/words/README.md` lists it for those who write. */
export function helpersFor({ labels, blank, mostExhibits = 4 }: HelperWords): Helpers {
  const word = (value: unknown) => {
    const name = raw(value);
    return escapeMarkdown(labels.find(`word.${name}`) ?? name);
  };
  const exhibits: Helper = (_, { exhibits: numbers }) => {
    if (numbers.length === 0) return '';
    const shown = numbers.slice(0, mostExhibits).map((n) => `[${n}](exhibit:${n})`);
    const rest = numbers.length - shown.length;
    return ` (${shown.join(', ')}${rest > 0 ? `, ${escapeMarkdown(labels('exhibit.more').replace('N', String(rest)))}` : ''})`;
  };
  return new Map<string, Helper>([
    ['exhibits', exhibits],
    ['word', ([value]) => word(value)],
    [
      'words',
      ([value]) =>
        raw(value)
          .split(/\s*,\s*/)
          .map(word)
          .join(', '),
    ],
    [
      'counted',
      ([count, one, many]) => `${escapeMarkdown(String(count))} ${String(count === 1 ? one : many)}`,
    ],
    ['plural', ([count, one, many]) => (count === 1 ? one : many)],
    ['some', ([value]) => (value instanceof ShownFact ? value.some : Boolean(value))],
    ['several', ([count]) => typeof count === 'number' && count > 1],
    ['moved', moved],
    [
      'blank',
      ([id]) => {
        if (blank === undefined) throw new Error('only letters have places to fill in');
        return `**${escapeMarkdown(`[________ ${blank(raw(id))}]`)}**`;
      },
    ],
  ]);
}

/** A difference with the word for its direction, or only the last word where it rounds to nothing. */
const moved: Helper = ([value, up, down, none]) => {
  const change = value instanceof ShownFact ? value.moved : undefined;
  if (change === undefined) return '';
  const verb = { up, down, none }[change.way];
  return change.way === 'none' ? String(verb) : `${String(verb)} ${escapeMarkdown(change.by)}`;
};

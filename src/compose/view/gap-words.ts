import type { Closable, Shortfall } from '../../core/model/results.js';
import type { Milestone, Substitute } from '../../core/model/rule-set.js';
import { type Inline, plain, text, wordsOf } from '../../core/words/blocks.js';
import type { FactNames, Facts } from '../../core/words/facts.js';
import type { Format } from '../../core/words/format.js';
import type { Labels } from '../../core/words/labels.js';
import type { Words } from '../../core/words/words.js';

/** Everything needed to put shortfalls in words. */
export interface GapWording {
  labels: Labels;
  words: Words;
  names: FactNames;
  format: Format;
}

/** Facts that name labels, and the group of each. */
const GROUPS: Record<string, string> = {
  thing: 'asked',
  positions: 'position',
  source: 'set-point-source',
  seen: 'run',
  asked: 'run',
  party: 'reading-from',
  moment: 'event',
  standIn: 'event',
};
const PARTIES: Record<string, string> = { first: 'reading-from', second: 'reading-from' };
const SOURCES: Record<string, string> = { first: 'set-point-source', second: 'set-point-source' };

/** A shortfall in one line: preceded by its line or stop, unless that was printed already. */
function shortfallInline(
  wording: GapWording,
  lack: Shortfall,
  said: Pick<Shortfall, 'line' | 'stop'> = {},
): Inline[] {
  const { names, words, labels } = wording;
  const lead =
    lack.line !== undefined && lack.line !== said.line
      ? [text(`${names.line(lack.line)}: `)]
      : lack.stop !== undefined && lack.stop !== said.stop
        ? [text(`${names.stop(lack.stop)}: `)]
        : [];
  if (lack.ways !== undefined) {
    const ways = lack.ways.map((way) =>
      way.map((one) => wordsOf(shortfallInline(wording, one, { ...said, ...lack }))).join(', '),
    );
    return [...lead, ...plain(`${labels('lacking.one-of')}: ${ways.join(`; ${labels('lacking.or')} `)}`)];
  }
  return [...lead, ...words.line(`lacking/${lack.is}`, localizedShortfallFacts(wording, lack))];
}

export const shortfallText = (wording: GapWording, lack: Shortfall): string =>
  wordsOf(shortfallInline(wording, lack));

function localizedShortfallFacts(wording: GapWording, lack: Shortfall): Facts {
  const own = lack.is === 'hands-differ' ? PARTIES : lack.is === 'sources-differ' ? SOURCES : {};
  return Object.fromEntries(
    Object.entries(lack.facts).map(([name, value]) => {
      const group = own[name] ?? GROUPS[name];
      if (group === undefined || typeof value !== 'string') return [name, value];
      const said = value.split(',').map((one) => wordFor(wording, group, one));
      return [name, said.join(` ${wording.labels('lacking.or')} `)];
    }),
  );
}

function wordFor({ labels }: GapWording, group: string, name: string): string {
  const found =
    labels.find(`${group}.${name}`) ?? (group === 'event' ? labels.find(`moment.${name}`) : undefined);
  return (found ?? name).replace(/^\p{Lu}(?=\p{Ll})/u, (letter) => letter.toLowerCase());
}

/** A milestone with its offset: `doors closed`, `24 h after delivery over`. */
export function milestoneText(wording: GapWording, moment: Milestone, seconds = 0): string {
  const { labels, format } = wording;
  const name = wordFor(wording, 'event', moment);
  if (seconds === 0) return name;
  return `${format.duration(Math.abs(seconds))} ${labels(seconds < 0 ? 'offset.before' : 'offset.after')} ${name}`;
}

/** The milestone that a closing depends on; undefined when the evidence is obtainable at any time. */
export function closingMilestone(wording: GapWording, closable: Closable): string | undefined {
  switch (closable.is) {
    case 'now':
      return undefined;
    case 'until':
      return milestoneText(wording, closable.moment, closable.seconds);
    case 'lost':
      return milestoneText(wording, closable.since, closable.seconds);
  }
}

/** The name of accepted substitute evidence. */
export function substituteText({ labels }: GapWording, what: Substitute): string {
  if ('document' in what) return labels(`asked.${what.document}`);
  if ('photo' in what) return labels(`asked.${what.photo}`);
  if ('statement' in what) return labels('asked.statement');
  return labels(`computed.${what.computed}`);
}

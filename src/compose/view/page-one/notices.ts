import type { ItemOf } from '../../../core/model/state.js';
import type { Fact } from '../../../core/words/blocks.js';
import { exhibitLinks, type View } from '../context.js';
import { evidenceSummary } from '../summary.js';
import { joined, withExhibits } from './inlines.js';

/** Most of each on page one; all are in their sections. */
const MOST = 4;
/** Longest words of a contact on page one. */
const LONGEST = 90;

/** Seals, exceptions written on the bill and who signed them, and who was told what and when. */
export function noticeFacts(view: View): Fact[] {
  const { labels } = view;
  const exceptions = view.of('exception').map((item) => ({ item, words: evidenceSummary(view, item) }));
  const contacts = byWeight(view.of('contact')).map((item) => ({ item, words: contactWords(view, item) }));
  return [
    ...sealFact(view),
    ...[
      { name: 'exceptions', all: exceptions },
      { name: 'notices', all: contacts },
    ].flatMap(({ name, all }): Fact[] => {
      if (all.length === 0) return [];
      const shown = all
        .slice(0, MOST)
        .map(({ item, words }) => withExhibits(words, exhibitLinks(view, [item.evidence])));
      const rest = all.length - shown.length;
      const more = rest === 0 ? [] : [withExhibits(labels('exhibit.more').replace('N', String(rest)), [])];
      return [{ label: labels(`cover.${name}`), value: joined([...shown, ...more]) }];
    }),
  ];
}

/** Contacts about pulps, a refusal or the goods first, in the order of their exhibits; others after them. */
function byWeight(all: readonly ItemOf<'contact'>[]): ItemOf<'contact'>[] {
  const isFirst = ({ subjects = [], notice }: ItemOf<'contact'>) =>
    notice !== undefined || subjects.some((one) => one !== 'other' && one !== 'delay' && one !== 'claim');
  return [...all.filter(isFirst), ...all.filter((one) => !isFirst(one))];
}

function contactWords({ labels, format }: View, item: ItemOf<'contact'>): string {
  const who = [labels(`contact-with.${item.with}`), item.withName, labels(`contact-how.${item.how}`)];
  const about = item.about.length > LONGEST ? `${item.about.slice(0, LONGEST)}…` : item.about;
  return `${who.filter(Boolean).join(', ')}, ${format.eventTime(item.time)}: “${about}”`;
}

/** Each seal number with what was seen of it. */
function sealFact(view: View): Fact[] {
  const seals = view.of('seal');
  const numbers = [...new Set(seals.map(({ number }) => number))].slice(0, MOST);
  if (numbers.length === 0) return [];
  const value = numbers.map((number) =>
    withExhibits(`${number}: `, []).concat(
      joined(
        seals
          .filter((seal) => seal.number === number)
          .map((seal) =>
            withExhibits(view.labels(`seal-state.${seal.state}`), exhibitLinks(view, [seal.evidence])),
          ),
        ', ',
      ),
    ),
  );
  return [{ label: view.labels('cover.seals'), value: joined(value) }];
}

import { deliveryTimeline } from '../../core/charts/delivery-timeline.js';
import { partyRole, type Stop } from '../../core/model/delivery.js';
import { omitUndefined } from '../../core/model/omit-undefined.js';
import type { TimelineItem } from '../../core/model/results.js';
import { type Block, type Cell, plain, wordsOf } from '../../core/words/blocks.js';
import { cell, exhibitLinks, type View } from './context.js';
import type { DrawnSection } from './drawn-section.js';
import { stopParty } from './reference-text.js';
import { evidenceSummary } from './summary.js';
import { column, listOrNone } from './tables.js';

const ASSET = 'timeline.svg';

/** The delivery on one axis, the main intervals, and every event. */
export function glanceSection(view: View): DrawnSection {
  const { labels, format, words, startZone, endZone } = view;
  const { items, intervals, untimed } = view.input.assessment.timeline;
  const blocks: Block[] = [...words.blocks('sections/glance')];
  const drawings = new Map<string, string>();
  const [first, last] = [items[0], items.at(-1)];
  if (first === undefined || last === undefined)
    blocks.push({ is: 'none', of: plain(labels('none.timeline')) });
  else {
    const count = (...kinds: TimelineItem['is'][]) => items.filter((item) => kinds.includes(item.is)).length;
    const alt = words.line('alt-timeline', {
      from: { is: 'time', at: first.at, zone: first.zone },
      to: { is: 'time', at: last.at, zone: last.zone },
      events: count('event'),
      photos: count('photo', 'document'),
      pulps: count('pulp'),
      looks: count('round', 'set-point'),
    });
    drawings.set(
      ASSET,
      deliveryTimeline(
        { items, intervals },
        {
          zone: startZone,
          ...omitUndefined({ otherZone: sameLocalTime(view, first.at, last.at) ? undefined : endZone }),
        },
        format,
        labels,
      ),
    );
    blocks.push({ is: 'picture', asset: ASSET, alt: wordsOf(alt), caption: [] });
  }
  blocks.push(...partyFacts(view), stopTable(view));
  if (intervals.length > 0)
    blocks.push(
      ...listOrNone(
        view,
        'timeline',
        intervals,
        [
          ['what', 2, (span) => labels(`interval.${span.id}`)],
          ['place', 2, (span) => (span.stop === undefined ? '' : view.names.stop(span.stop))],
          ['from', 2.6, (span) => format.time(span.from, view.zoneOf(span.stop))],
          [
            'to',
            2.6,
            (span) => format.time(span.to, span.stop === undefined ? endZone : view.zoneOf(span.stop)),
          ],
          ['length', 1.3, (span) => format.duration(span.seconds), 'right'],
          ['exhibits', 1.2, (span) => exhibitLinks(view, span.evidence, 4)],
        ],
        labels('sub.intervals'),
      ),
    );
  const events = items.filter((item) => item.is === 'event' || item.is === 'outcome');
  if (events.length > 0)
    blocks.push(
      ...listOrNone(
        view,
        'timeline',
        events,
        [
          ['time', 2.6, (item) => format.time(item.at, item.zone)],
          ['what', 2, (item) => eventName(view, item)],
          ['place', 2, (item) => (item.stop === undefined ? '' : view.names.stop(item.stop))],
          ['remark', 3, (item) => remarkOf(view, item)],
          ['exhibit', 1, (item) => exhibitLinks(view, [item.evidence])],
        ],
        labels('sub.events'),
      ),
    );
  if (untimed.length > 0)
    blocks.push(
      { is: 'heading', level: 2, text: labels('sub.untimed') },
      { is: 'paragraph', of: exhibitLinks(view, untimed, 60) },
    );
  return { section: { id: 'glance', title: labels('section.glance'), blocks }, drawings };
}

/** What the one who noted an event wrote of it; outcomes have a table of their own. */
function remarkOf(view: View, { evidence }: TimelineItem): string {
  const item = evidence === undefined ? undefined : view.item(evidence);
  return item?.kind === 'event' ? evidenceSummary(view, item) : '';
}

/** An event or outcome by its name; a refusal stands out. */
function eventName({ labels }: View, { event, outcome, label }: TimelineItem): Cell | string {
  if (event === 'refused') return { is: 'alert', of: plain(labels('event.refused')) };
  if (outcome === 'refused') return { is: 'alert', of: plain(labels('kind-of-outcome.refused')) };
  if (outcome !== undefined) return labels(`kind-of-outcome.${outcome}`);
  return event === undefined ? label : labels(`event.${event}`);
}

/** The parties in full. */
function partyFacts({ labels, input }: View): Block[] {
  const known = input.state.delivery.parties;
  const facts = partyRole.options.flatMap((role) => {
    const party = known[role];
    if (party === undefined) return [];
    const words = [party.name, party.address].filter((part) => part !== undefined).join(', ');
    return [{ label: labels(`role.${role}`), value: plain(words) }];
  });
  return facts.length === 0 ? [] : [{ is: 'facts', facts }];
}

/** The stops in full, with what is done there and the clock used. */
function stopTable(view: View): Block {
  const { labels, names } = view;
  const { stops, lines } = view.input.state.delivery;
  return {
    is: 'table',
    columns: [
      column(view, 'place', 4),
      column(view, 'what', 1.2),
      column(view, 'planned', 2.6),
      column(view, 'zone', 1.9),
      column(view, 'lines', 3.2),
    ],
    rows: stops.map((stop): Cell[] => [
      cell([stop.place, ...stopParty(labels, stop)].join('; ')),
      cell(labels(`does.${stop.does}`)),
      cell(plannedText(view, stop)),
      cell(stop.zone.replaceAll('_', ' ')),
      cell(
        lines
          .filter((line) => line.from === stop.id || line.to === stop.id)
          .map((line) => names.line(line.id))
          .join('; '),
      ),
    ]),
  };
}

/** The planned time, or the appointment from and until. */
function plannedText({ labels, format }: View, { planned, plannedUntil }: Stop): string {
  if (planned === undefined) return labels('none.not-given');
  const from = format.localTime(planned);
  return plannedUntil === undefined ? from : `${from} – ${format.localTime(plannedUntil)}`;
}

/** Whether both ends of the load have the same local time at these instants. */
export function sameLocalTime(view: View, from: number, to: number): boolean {
  const { format, startZone, endZone } = view;
  return [from, to].every((at) => format.time(at, startZone) === format.time(at, endZone));
}

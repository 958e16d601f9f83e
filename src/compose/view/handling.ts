import type { StopDoors } from '../../core/model/results.js';
import type { ItemOf } from '../../core/model/state.js';
import { type Block, plain } from '../../core/words/blocks.js';
import { byExhibitNumber } from './by-subject.js';
import { exhibitLinks, placeText, type View } from './context.js';
import { evidenceTable, listOrNone } from './tables.js';

/** Shocks and hard braking as a recorder marked them; nothing where none is recorded. */
export function shockBlocks(view: View): Block[] {
  const { labels, format, startZone } = view;
  const shocks = view.input.assessment.shocks ?? [];
  const rows = shocks.flatMap((result) => {
    const item = view.item(result.evidence);
    return item?.kind === 'shock' ? [{ result, item }] : [];
  });
  if (rows.length === 0) return [];
  const peak = ({ peak: found }: ItemOf<'shock'>) => (found === undefined ? '–' : format.acceleration(found));
  return listOrNone(
    view,
    'shocks',
    rows,
    [
      [
        'time',
        2.6,
        ({ item, result }) =>
          result.at === undefined
            ? format.eventTime(item.time)
            : format.time(result.at, zoneOf(item) ?? startZone),
      ],
      ['what', 1.3, ({ item }) => labels(`shock.${item.what}`)],
      [
        'shock-peak',
        1.1,
        ({ item, result }) => (result.over === true ? { is: 'alert', of: plain(peak(item)) } : peak(item)),
        'right',
      ],
      [
        'lasted',
        1,
        ({ item }) =>
          item.milliseconds === undefined
            ? '–'
            : `${format.number(item.milliseconds, decimalsOf(item.milliseconds))}\u00a0ms`,
        'right',
      ],
      ['axis', 1.1, ({ item }) => (item.axis === undefined ? '' : labels(`shock-axis.${item.axis}`))],
      [
        'shock-threshold',
        1.1,
        ({ item }) => (item.threshold === undefined ? '–' : format.acceleration(item.threshold)),
        'right',
      ],
      [
        'place',
        1.7,
        ({ item, result }) =>
          [placeText(view, item), labels(`shock-when.${result.when}`)]
            .filter((part) => part !== '')
            .join('; '),
      ],
      ['exhibit', 0.9, ({ item }) => exhibitLinks(view, [item.evidence])],
    ],
    labels('sub.shocks'),
  );
}

/** A tenth of a millisecond only where it is stated. */
const decimalsOf = (milliseconds: number): number => (Number.isInteger(milliseconds) ? 0 : 1);

const zoneOf = ({ time }: ItemOf<'shock'>) => (time.is === 'known' ? time.zone : undefined);

/** Pallets as they were found, with their photographs; nothing where none are recorded. */
export function palletBlocks(view: View): Block[] {
  const found = byExhibitNumber(view, view.of('pallets'));
  return found.length === 0 ? [] : evidenceTable(view, found, 'pallets', view.labels('sub.pallets'));
}

/** Openings of the doors by stop, as noted and as logged; nothing of a delivery of one stop at each end without a log of them. */
export function doorBlocks(view: View): Block[] {
  const { labels, format, names } = view;
  const doors = view.input.assessment.doors ?? [];
  const { stops } = view.input.state.delivery;
  if (stops.length < 3 && !doors.some(({ logged }) => logged.length > 0)) return [];
  const at = (one: StopDoors, end: 'from' | 'to') =>
    one.noted
      .flatMap((opening) => opening[end] ?? [])
      .map((ms) => format.time(ms, view.zoneOf(one.stop)))
      .join('; ') || '–';
  return listOrNone(
    view,
    'doors',
    doors,
    [
      ['place', 1.8, ({ stop }) => (stop === undefined ? labels('doors.between') : names.stop(stop))],
      ['opened', 2.5, (one) => at(one, 'from')],
      ['closed', 2.5, (one) => at(one, 'to')],
      [
        'logged-openings',
        1.2,
        ({ logged }) => (logged.length === 0 ? '–' : format.number(logged.length)),
        'right',
      ],
      [
        'logged-open',
        1.5,
        ({ logged, loggedSeconds, stop }) => {
          if (logged.length === 0) return '–';
          const text = format.duration(loggedSeconds);
          return stop === undefined ? { is: 'alert', of: plain(text) } : text;
        },
        'right',
      ],
      [
        'exhibits',
        1.2,
        ({ noted, logged }) =>
          exhibitLinks(
            view,
            [...new Set([...noted.flatMap(({ evidence }) => evidence), ...logged.map(({ log }) => log)])],
            4,
          ),
      ],
    ],
    labels('sub.doors'),
  );
}

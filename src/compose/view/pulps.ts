import { type EvidenceId, position } from '../../core/model/evidence.js';
import type { InstrumentRecord, PulpGroup, PulpReading } from '../../core/model/results.js';
import { type Block, type Cell, type Inline, plain, type Section, text } from '../../core/words/blocks.js';
import { cell, exhibitLinks, type View } from './context.js';
import { heaviestRows } from './long-tables.js';
import { joined, withExhibits } from './page-one/inlines.js';
import { comparisonBlocks } from './pulp-comparisons.js';
import { formatRange } from './range.js';
import { column } from './tables.js';

export function pulpSection(view: View): Section {
  const { labels, words } = view;
  const groups = view.input.assessment.pulps;
  const blocks: Block[] = [...words.blocks('sections/pulps')];
  if (groups.length === 0) blocks.push({ is: 'none', of: plain(labels('none.pulps')) });
  blocks.push(...comparisonBlocks(view));
  for (const line of new Set(groups.map((group) => group.line)))
    blocks.push(
      ...matrix(
        view,
        groups.filter((group) => group.line === line),
      ),
    );
  blocks.push(...instruments(view, groups));
  return { id: 'pulps', title: labels('section.pulps'), blocks };
}

/** The line, and where its pulps were taken. */
export const groupName = (view: View, group: Pick<PulpGroup, 'line' | 'does' | 'stop'>) =>
  `${view.names.line(group.line)}, ${view.labels(group.does === 'load' ? 'cover.loading' : 'cover.unloading').toLowerCase()} ${view.names.stop(group.stop)}`;

/** Each thermometer with its last ice-water check, or that there is none. */
function instruments(view: View, groups: readonly PulpGroup[]): Block[] {
  const { labels, format } = view;
  const each = groups.flatMap(({ stop, instruments: used = [] }) => used.map((one) => ({ ...one, stop })));
  const keyOf = ({ instrument, check }: (typeof each)[number]) =>
    JSON.stringify([instrument ?? '', check?.evidence ?? '']);
  const all = [...new Map(each.map((one) => [keyOf(one), one])).values()].map((one) => ({
    ...one,
    count: each.filter((other) => keyOf(other) === keyOf(one)).reduce((sum, { count }) => sum + count, 0),
  }));
  if (all.length === 0) return [];
  // The check has the time of its own place: by the delivery dock's clock one photo would have two times.
  const zoneOf = (id: EvidenceId, stop: string) => {
    const time = view.item(id)?.time;
    return time?.is === 'known' ? time.zone : view.zoneOf(stop);
  };
  return [
    { is: 'heading', level: 2, text: labels('sub.thermometers') },
    {
      is: 'list',
      ordered: false,
      items: all.map(({ instrument, count, check, record, stop }): Block[] => [
        {
          is: 'paragraph',
          of: [
            text(
              `${instrument ?? labels('pulp.no-instrument')} (${count}): ${
                check === undefined
                  ? labels('pulp.no-check')
                  : `${labels(check.names ? 'pulp.checked' : 'pulp.last-check')}${
                      check.at === undefined ? '' : `, ${format.time(check.at, zoneOf(check.evidence, stop))}`
                    } (`
              }`,
            ),
            ...(check === undefined ? [] : [...exhibitLinks(view, [check.evidence]), text(')')]),
            text(record === undefined ? '.' : `; ${recordWords(view, record)}.`),
          ],
        },
      ]),
    },
  ];
}

/** What delivery.yaml says of a thermometer: its papers, its error in ice, and what it changed by between checks. */
function recordWords({ labels, format }: View, record: InstrumentRecord): string {
  const { serial, certificate, checks, driftKelvin } = record;
  const errors = checks.map(({ errorKelvin }) => format.signed(errorKelvin));
  return [
    ...(serial === undefined ? [] : [`${labels('pulp.serial')} ${serial}`]),
    ...(certificate === undefined ? [] : [`${labels('pulp.certificate')} ${certificate}`]),
    ...(errors.length === 0 ? [] : [`${labels('pulp.error-in-ice')} ${errors.join(', ')}`]),
    ...(driftKelvin === undefined ? [] : [`${labels('pulp.drift')} ${format.signed(driftKelvin)}`]),
  ].join('; ');
}

/** Readings of a line, each once: by place in the load, and by stop and hand. */
function matrix(view: View, groups: readonly PulpGroup[]): Block[] {
  const { labels, names } = view;
  const [first] = groups;
  if (first === undefined) return [];
  const columns = groups.flatMap((group) => {
    const hands = [...new Set(group.readings.map(({ from }) => from))];
    return hands.map((from) => ({
      group,
      readings: group.readings.filter((one) => one.from === from),
      from,
    }));
  });
  const places = [...position.options, undefined].filter((place) =>
    groups.some(({ readings }) => readings.some((one) => one.position === place)),
  );
  const range =
    first.band === undefined
      ? labels('pulp-verdict.no-instruction')
      : `${labels('cover.asked')} ${formatRange(view, first.band)}`;
  const guards = groups.flatMap(({ readings }) => readings.map(({ uncertainty }) => uncertainty.guardKelvin));
  const room = [...new Set(guards.map((kelvin) => `± ${view.format.difference(kelvin)}`))].join(', ');
  const { shown, note } = mostTelling(view, groups);
  return [
    { is: 'heading', level: 2, text: names.line(first.line) },
    {
      is: 'paragraph',
      of: plain(
        `${range.charAt(0).toUpperCase()}${range.slice(1)}; ${labels('column.room').toLowerCase()} ${room}.`,
      ),
    },
    ...note,
    {
      is: 'table',
      columns: [
        column(view, 'position', 1),
        ...columns.map(({ group, from }) => ({
          title: `${labels(`does.${group.does}`)}, ${names.stop(group.stop)}; ${labels(`reading-from.${from}`)}`,
          width: 3,
        })),
      ],
      rows: places.map((place): Cell[] => [
        cell(place === undefined ? labels('none.not-given') : labels(`position.${place}`)),
        ...columns.map(({ readings }) =>
          joined(
            readings
              .filter((one) => one.position === place && shown.has(one.evidence))
              .map((one) => readingWords(view, one)),
          ),
        ),
      ]),
    },
  ];
}

/** `42.6 °F, 4:11 AM above (13)`, marked where it is not clearly within the range. */
function readingWords(view: View, { evidence, celsius, answer, at }: PulpReading): Inline[] {
  const { format, labels } = view;
  const time = view.item(evidence)?.time;
  const when = at === undefined || time?.is !== 'known' ? undefined : format.clock(at, time.zone);
  const said = [format.short(celsius), ...(when === undefined ? [] : [when])].join(', ');
  const out =
    answer === 'within' || answer === 'no-instruction' ? '' : ` ${labels(`limit-answer.${answer}`)}`;
  return withExhibits(`${said}${out}`, exhibitLinks(view, [evidence]));
}

/** The readings that a matrix shows: all, or those farthest out of range where there are more than a table holds. */
function mostTelling(
  view: View,
  groups: readonly PulpGroup[],
): { shown: ReadonlySet<EvidenceId>; note: Block[] } {
  const all = groups.flatMap(({ readings }) => readings);
  const { shown, note } = heaviestRows(view, all, ({ beyond = 0 }) => beyond, 'farthest', 'pulps.csv');
  return { shown: new Set(shown.map(({ evidence }) => evidence)), note };
}

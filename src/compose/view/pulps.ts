import type { EvidenceId } from '../../core/model/evidence.js';
import type { InstrumentRecord, PulpGroup } from '../../core/model/results.js';
import { type Block, type Cell, plain, type Section, text } from '../../core/words/blocks.js';
import { cell, exhibitLinks, type View } from './context.js';
import { heaviestRows } from './long-tables.js';
import { comparisonBlocks } from './pulp-comparisons.js';
import { formatRange } from './range.js';
import { column, tableOf } from './tables.js';

export function pulpSection(view: View, drawing: readonly Block[] = []): Section {
  const { labels, words } = view;
  const groups = view.input.assessment.pulps;
  const blocks: Block[] = [...words.blocks('sections/pulps')];
  if (groups.length === 0) blocks.push({ is: 'none', of: plain(labels('none.pulps')) });
  else blocks.push(overview(view, groups));
  blocks.push(...drawing, ...comparisonBlocks(view));
  for (const group of groups) blocks.push(...readings(view, group));
  return { id: 'pulps', title: labels('section.pulps'), blocks };
}

/** The line, and where its pulps were taken. */
export const groupName = (view: View, group: Pick<PulpGroup, 'line' | 'does' | 'stop'>) =>
  `${view.names.line(group.line)}, ${view.labels(group.does === 'load' ? 'cover.loading' : 'cover.unloading').toLowerCase()} ${view.names.stop(group.stop)}`;

function overview(view: View, groups: readonly PulpGroup[]): Block {
  const { format } = view;
  return tableOf(view, groups, [
    ['line', 3.4, (group) => groupName(view, group)],
    ['reading', 0.8, (group) => String(group.count), 'right'],
    ['lowest', 1.6, (group) => format.temperature(group.min), 'right'],
    ['highest', 1.6, (group) => format.temperature(group.max), 'right'],
    ['mean', 1.6, (group) => format.temperature(group.mean), 'right'],
    ['spread', 1.6, (group) => (group.spread === undefined ? '–' : format.difference(group.spread)), 'right'],
    [
      'in-band',
      0.9,
      (group) => {
        if (group.band === undefined) return '–';
        const share = `${group.inBand} / ${group.count}`;
        return group.inBand < group.count ? { is: 'alert', of: plain(share) } : share;
      },
      'right',
    ],
    ['decided', 2.2, (group) => answersOf(view, group)],
  ]);
}

/** How many readings are clearly within, clearly beyond, or too near a limit to tell. */
function answersOf({ labels }: View, { answers }: PulpGroup): string {
  if (answers === undefined) return '–';
  return (['within', 'above', 'below', 'not-decidable'] as const)
    .filter((one) => answers[one] > 0)
    .map((one) => `${answers[one]} ${labels(`limit-answer.${one}`)}`)
    .join(', ');
}

/** Each thermometer with its last ice-water check, or that there is none. */
function instruments(view: View, group: PulpGroup): Block[] {
  const { labels, format } = view;
  const all = group.instruments ?? [];
  if (all.length === 0) return [];
  // The check has the time of its own place: by the delivery dock's clock one photo would have two times.
  const zoneOf = (id: EvidenceId) => {
    const time = view.item(id)?.time;
    return time?.is === 'known' ? time.zone : view.zoneOf(group.stop);
  };
  return [
    {
      is: 'list',
      ordered: false,
      items: all.map(({ instrument, count, check, record }): Block[] => [
        {
          is: 'paragraph',
          of: [
            text(
              `${instrument ?? labels('pulp.no-instrument')} (${count}): ${
                check === undefined
                  ? labels('pulp.no-check')
                  : `${labels(check.names ? 'pulp.checked' : 'pulp.last-check')}${
                      check.at === undefined ? '' : `, ${format.time(check.at, zoneOf(check.evidence))}`
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

function readings(view: View, group: PulpGroup): Block[] {
  const { labels, format } = view;
  const band =
    group.band === undefined
      ? labels('pulp-verdict.no-instruction')
      : `${labels('cover.asked')} ${formatRange(view, group.band)}`;
  const { shown, note } = heaviestRows(
    view,
    group.readings,
    ({ beyond = 0 }) => beyond,
    'farthest',
    'pulps.csv',
  );
  return [
    { is: 'heading', level: 2, text: groupName(view, group) },
    { is: 'paragraph', of: plain(`${band.charAt(0).toUpperCase()}${band.slice(1)}.`) },
    ...instruments(view, group),
    ...note,
    {
      is: 'table',
      columns: [
        column(view, 'time', 2.6),
        column(view, 'position', 0.8),
        column(view, 'reading', 1.6, 'right'),
        column(view, 'room', 1.2, 'right'),
        column(view, 'verdict', 1.8),
        column(view, 'by', 1.1),
        column(view, 'instrument', 2.1),
        column(view, 'exhibit', 0.8),
      ],
      rows: shown.map((one): Cell[] => {
        const item = view.item(one.evidence);
        const verdict = labels(
          one.answer === 'no-instruction' ? 'pulp-verdict.no-instruction' : `limit-answer.${one.answer}`,
        );
        return [
          cell(item === undefined ? '' : format.eventTime(item.time)),
          cell(one.position === undefined ? '' : labels(`position.${one.position}`)),
          cell(format.temperature(one.celsius)),
          cell(`± ${format.difference(one.uncertainty.guardKelvin)}`),
          one.answer === 'above' || one.answer === 'below'
            ? { is: 'alert', of: plain(`${verdict}, ${format.difference(one.beyond)}`) }
            : cell(verdict),
          cell(item?.by ?? labels(`reading-from.${one.from}`)),
          cell(one.instrument),
          exhibitLinks(view, [one.evidence]),
        ];
      }),
    },
  ];
}

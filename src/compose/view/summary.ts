import { assertNever } from '../../core/model/error.js';
import type { EvidenceItem, ItemOf } from '../../core/model/state.js';
import { formatAmount } from '../../core/words/amounts.js';
import type { View } from './context.js';
import { palletParts, scaleParts, shockParts, weightText } from './handling-words.js';
import { inspectionParts } from './inspection-words.js';
import { exceptionParts, instrumentParts, paperParts, particularParts } from './particular-words.js';

/** The title of an item of evidence. */
export function titleOf(view: View, item: EvidenceItem): string {
  const { labels } = view;
  switch (item.kind) {
    case 'photo':
    case 'document':
      return item.subject === undefined
        ? labels(`kind.${item.kind}`)
        : `${labels(`subject.${item.subject.is}`)}${item.subject.sure === 'proposed' ? ` (${labels('plate.proposed')})` : ''}`;
    case 'event':
      return labels(`event.${item.event}`);
    default:
      return labels(`kind.${item.kind}`);
  }
}

/** Other photos of the same scene that are named; the rest is counted. */
const MOST_ALIKE = 3;

/** What a reader should know about a file, one line for each flag. */
export function flagLines(view: View, item: EvidenceItem): string[] {
  if (!('flags' in item)) return [];
  return item.flags.map(({ is, detail }) => {
    const all = detail.split('; ');
    const shown = is === 'same-scene' ? all.slice(0, MOST_ALIKE) : all;
    const rest = all.length - shown.length;
    const more = rest === 0 ? '' : `; ${view.labels('plate.more-alike').replace('N', String(rest))}`;
    const said = detail === '' ? '' : `: ${view.remark('flag', shown.join('; '))}${more}`;
    return `${view.labels(`flag.${is}`)}${said}`;
  });
}

/** An item of evidence in one line. */
export function evidenceSummary(view: View, item: EvidenceItem): string {
  return [...own(view, item), ...(item.caption === undefined ? [] : [view.remark('caption', item.caption)])]
    .map((part) => part.replace(/\s+/g, ' ').trim())
    .join('; ');
}

function own(view: View, item: EvidenceItem): string[] {
  const { format, labels, names } = view;
  const degrees = (t: { value: number; unit: '°F' | '°C' }) => `${format.number(t.value, 1)}\u00a0${t.unit}`;
  switch (item.kind) {
    case 'photo':
      return [];
    case 'document':
      return [item.file.name];
    case 'unit-log':
    case 'readings':
      return [item.file.name];
    case 'pulp':
      return [
        degrees(item.temperature),
        ...(item.line === undefined ? [] : [names.line(item.line)]),
        labels(`reading-from.${item.from}`),
      ];
    case 'set-point':
      return [
        degrees(item.temperature),
        labels(`set-point-source.${item.shownBy}`),
        ...(item.run === undefined ? [] : [labels(`run.${item.run}`)]),
      ];
    case 'round':
      return [
        ...(item.boxAir === undefined ? [] : [`${labels('column.box-air')} ${degrees(item.boxAir)}`]),
        ...(item.fuel === undefined ? [] : [`${labels('column.fuel')} ${format.share(item.fuel)}`]),
        ...item.alarms,
      ];
    case 'seal':
      return [`${item.number}, ${labels(`seal-state.${item.state}`)}`];
    case 'bracing':
      return [labels(`device.${item.device}`), ...(item.note === undefined ? [] : [item.note])];
    case 'pattern':
      return [
        `${labels('load.rows')} ${item.rows.from}–${item.rows.to}: ${labels(`pattern.${item.pattern}`)}`,
        ...(item.line === undefined ? [] : [names.line(item.line)]),
        ...(item.palletWeight === undefined
          ? []
          : [`${labels('load.each')} ${weightText(view, item.palletWeight)}`]),
        ...item.blocks.map((block) => labels(`air-block.${block}`)),
        ...(item.note === undefined ? [] : [item.note]),
      ];
    case 'scale':
      return scaleParts(view, item);
    case 'shock':
      return shockParts(view, item);
    case 'pallets':
      return palletParts(view, item);
    case 'event':
      return [
        ...(item.reason === undefined ? [] : [labels(`stop-reason.${item.reason}`)]),
        ...(item.note === undefined ? [] : [item.note]),
      ];
    case 'outcome':
      return outcomeParts(view, item);
    case 'inspection':
      return inspectionParts(view, item);
    case 'instrument':
      return instrumentParts(view, item);
    case 'particular':
      return particularParts(view, item);
    case 'exception':
      return exceptionParts(view, item);
    case 'contact':
      return [
        `${[labels(`contact-with.${item.with}`), item.withName, labels(`contact-how.${item.how}`)].filter(Boolean).join(', ')}: ${item.about}`,
        ...(item.subjects ?? []).map((subject) => labels(`contact-subject.${subject}`)),
      ];
    case 'statement':
      return [item.text.length > 160 ? `${item.text.slice(0, 160)}…` : item.text];
    default:
      return assertNever(item);
  }
}

/** An outcome in words: how much, of which line, why, in whose words, and on which document. */
function outcomeParts(view: View, item: ItemOf<'outcome'>): string[] {
  const { labels, format, names } = view;
  const much =
    item.quantity === undefined
      ? item.all === true
        ? [labels('goods-outcome.all')]
        : []
      : [formatAmount(labels, format, { value: Number(item.quantity.amount), unit: item.quantity.unit })];
  const what = [
    labels(`goods-outcome.${item.outcome}`),
    ...much,
    ...(item.line === undefined ? [] : [names.line(item.line)]),
  ];
  const told = item.told === undefined ? [] : [labels(`outcome-told.${item.told}`)];
  return [
    what.join(', '),
    ...(item.rest === undefined
      ? []
      : [`${labels('goods-outcome.rest')} ${labels(`goods-outcome.${item.rest}`)}`]),
    ...item.reasons.map((reason) => labels(`outcome-reason.${reason}`)),
    ...(item.words === undefined ? [] : [`“${item.words}”`]),
    ...(item.saidBy === undefined ? [] : [`${labels('goods-outcome.said-by')} ${item.saidBy}`]),
    ...(told.length === 0 && item.toldName === undefined
      ? []
      : [
          `${labels('goods-outcome.told')} ${[...told, ...(item.toldName === undefined ? [] : [item.toldName])].join(', ')}`,
        ]),
    ...(item.how === undefined ? [] : [labels(`outcome-how.${item.how}`)]),
    ...paperParts(view, item),
  ];
}

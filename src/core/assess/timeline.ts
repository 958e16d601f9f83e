import { assertNever } from '../model/error.js';
import type { EvidenceId } from '../model/evidence.js';
import { omitUndefined } from '../model/omit-undefined.js';
import type { Timeline, TimelineInterval, TimelineItem } from '../model/results.js';
import type { EvidenceItem, RecordState } from '../model/state.js';
import { milliseconds } from '../model/time.js';
import { firstLoading, lastUnloading, type MilestoneEvent, type Milestones } from './milestones.js';

/** All evidence with a known time on one axis, intervals between events, and evidence without a known time. */
export function timelineOf(state: RecordState, milestones: Milestones): Timeline {
  const items: TimelineItem[] = [];
  const untimed: EvidenceId[] = [];
  for (const item of state.evidence) {
    if (item.time.is !== 'known') {
      untimed.push(item.evidence);
      continue;
    }
    items.push({
      at: milliseconds(item.time.instant),
      zone: item.time.zone,
      uncertaintySeconds: item.time.uncertaintySeconds,
      evidence: item.evidence,
      ...omitUndefined({ stop: item.place?.stop }),
      ...named(item),
    });
  }
  items.sort((a, b) => a.at - b.at);
  return { items, intervals: intervalsOf(milestones), untimed };
}

function named(item: EvidenceItem): Pick<TimelineItem, 'is' | 'event' | 'outcome' | 'label'> {
  switch (item.kind) {
    case 'event':
      return { is: 'event', event: item.event, label: item.note ?? item.event.replaceAll('-', ' ') };
    case 'photo':
      return { is: 'photo', label: item.caption ?? item.subject?.is.replaceAll('-', ' ') ?? item.file.name };
    case 'document':
    case 'readings':
    case 'unit-log':
      return {
        is: 'document',
        label: item.caption ?? item.subject?.is.replaceAll('-', ' ') ?? item.file.name,
      };
    case 'pulp':
    case 'set-point':
      return { is: item.kind, label: `${item.temperature.value} ${item.temperature.unit}` };
    case 'round':
      return { is: 'round', label: unitCheckWords(item) };
    case 'seal':
      return { is: 'seal', label: `${item.number} ${item.state}` };
    case 'bracing':
      return { is: 'bracing', label: item.note ?? item.device.replaceAll('-', ' ') };
    case 'pattern':
      return { is: 'pattern', label: `rows ${item.rows.from}–${item.rows.to} ${item.pattern}` };
    case 'scale':
      return { is: 'scale', label: 'scale' };
    case 'shock':
      return { is: 'shock', label: shockWords(item) };
    case 'pallets':
      return { is: 'pallets', label: item.note ?? item.state };
    case 'outcome':
      return { is: 'outcome', outcome: item.outcome, label: outcomeWords(item) };
    case 'inspection':
      return { is: 'inspection', label: `lot ${item.lot}` };
    case 'instrument':
      return { is: 'instrument', label: `${item.type} ${item.name}` };
    case 'particular':
      return { is: 'particular', label: particularWords(item) };
    case 'exception':
      return { is: 'exception', label: item.words };
    case 'contact':
      return { is: 'contact', label: `${item.with}: ${item.about}` };
    case 'statement':
      return { is: 'statement', label: item.caption ?? beginning(item.text) };
    default:
      return assertNever(item);
  }
}

/** `hard braking 0.52 g`. */
const shockWords = ({ what, peak }: Extract<EvidenceItem, { kind: 'shock' }>): string =>
  [what.replaceAll('-', ' '), ...(peak === undefined ? [] : [`${peak.value} ${peak.unit}`])].join(' ');
/** `count 480 cartons`, `counted by shipper`, `defrost: every 6 h`. */
function particularWords({
  of: subject,
  who,
  quantity,
  words,
}: Extract<EvidenceItem, { kind: 'particular' }>): string {
  const parts = [
    subject.replaceAll('-', ' '),
    ...(who === undefined ? [] : [who.party]),
    ...(quantity === undefined ? [] : [`${quantity.amount} ${quantity.unit}`]),
  ];
  return words === undefined ? parts.join(' ') : `${parts.join(' ')}: ${words}`;
}

/** `refused 8 pallets: soft, mold`. */
function outcomeWords({ outcome, quantity, all, words }: Extract<EvidenceItem, { kind: 'outcome' }>): string {
  const much = quantity === undefined ? (all === true ? 'all' : '') : `${quantity.amount} ${quantity.unit}`;
  const what = [outcome.replaceAll('-', ' '), much].filter((part) => part !== '').join(' ');
  return words === undefined ? what : `${what}: ${words}`;
}

/** A unit check in words: the display first, then the remark. */
function unitCheckWords({
  boxAir,
  setPoint,
  fuel,
  alarms,
  caption,
}: Extract<EvidenceItem, { kind: 'round' }>): string {
  const parts = [
    ...(boxAir === undefined ? [] : [`air ${boxAir.value} ${boxAir.unit}`]),
    ...(setPoint === undefined ? [] : [`set point ${setPoint.value} ${setPoint.unit}`]),
    ...(fuel === undefined ? [] : [`fuel ${Math.round(fuel * 100)} %`]),
    ...(alarms.length === 0 ? [] : [`alarms ${alarms.join(', ')}`]),
    ...(caption === undefined ? [] : [caption]),
  ];
  return parts.length === 0 ? 'look at the unit' : parts.join('; ');
}

/** A statement can be pages long; the timeline shows its first words. */
function beginning(text: string): string {
  const letters = [...text.replace(/\s+/g, ' ').trim()];
  return letters.length <= MOST_LETTERS ? letters.join('') : `${letters.slice(0, MOST_LETTERS).join('')}…`;
}

const MOST_LETTERS = 80;

function intervalsOf(milestones: Milestones): TimelineInterval[] {
  const found: TimelineInterval[] = [];
  const add = (
    id: TimelineInterval['id'],
    first: MilestoneEvent | undefined,
    second: MilestoneEvent | undefined,
    stop?: string,
  ) => {
    if (first === undefined || second === undefined || second.at < first.at) return;
    found.push({
      id,
      from: first.at,
      to: second.at,
      seconds: (second.at - first.at) / 1000,
      evidence: [first.evidence, second.evidence],
      ...omitUndefined({ stop }),
    });
  };
  for (const stop of milestones.stops) {
    const here = milestones.events.filter((one) => one.stop === stop.id);
    const first = (...names: MilestoneEvent['event'][]) => here.find((one) => names.includes(one.event));
    const opened = first('doors-opened');
    const ended =
      stop.does === 'load'
        ? here.findLast((one) => one.event === 'doors-closed')
        : first('refused', 'unloaded', 'doors-closed');
    if (stop.does === 'load')
      add(
        'on-the-dock',
        first('arrived'),
        here.findLast((one) => one.event === 'departed'),
        stop.id,
      );
    add('doors-open', opened, ended, stop.id);
    if (stop.does === 'unload') {
      const arrived = first('arrived', 'notice-of-arrival');
      add('arrival-to-doors', arrived, opened, stop.id);
      add('arrival-to-refusal', arrived, first('refused'), stop.id);
    }
  }
  const from = firstLoading(milestones.stops)?.id;
  const to = lastUnloading(milestones.stops)?.id;
  const departed = milestones.events.findLast((one) => one.stop === from && one.event === 'departed');
  add(
    'in-transit',
    departed,
    milestones.events.find((one) => one.stop === to && one.event === 'arrived'),
  );
  return found.sort((a, b) => a.from - b.from);
}

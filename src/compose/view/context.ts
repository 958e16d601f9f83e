import type { EvidenceId, EvidenceKind } from '../../core/model/evidence.js';
import type { Volume } from '../../core/model/manifest.js';
import type { EvidenceItem, ItemOf } from '../../core/model/state.js';
import { knownMilliseconds, type Zone } from '../../core/model/time.js';
import type { Cell, Inline } from '../../core/words/blocks.js';
import { text } from '../../core/words/blocks.js';
import type { FactNames } from '../../core/words/facts.js';
import { type Format, formatFor } from '../../core/words/format.js';
import { type Labels, redactedCopyLabels } from '../../core/words/labels.js';
import { type TranslateRemark, untranslated } from '../../core/words/remarks.js';
import { type Words, wordsFrom } from '../../core/words/words.js';
import { exhibitNumbers } from '../exhibits.js';
import type { ComposeInput } from '../input.js';
import { compartmentIn } from './compartment-words.js';
import { factNames } from './names.js';

/** The context of every section: the results, and the words and formats for them. */
export interface View {
  volume: Volume;
  input: ComposeInput;
  format: Format;
  labels: Labels;
  words: Words;
  names: FactNames;
  /** A compartment of the trailer in words: `compartment front`. */
  compartment: (id: string) => string;
  /** A sentence that the tool wrote into the record, in the language of the pages; see `TranslateRemark`. */
  remark: TranslateRemark;
  number: (id: EvidenceId) => number | undefined;
  item: (id: EvidenceId) => EvidenceItem | undefined;
  /** Exhibits of one kind, in the order of their numbers. */
  of: <K extends EvidenceKind>(kind: K) => ItemOf<K>[];
  /** Zone of the first loading stop and of the last unloading stop. */
  startZone: Zone;
  endZone: Zone;
  zoneOf: (stop: string | undefined) => Zone;
}

export function viewOf(
  input: ComposeInput,
  templates: {
    templates: ReadonlyMap<string, string>;
    folder: string;
    files?: ReadonlyMap<string, string>;
    remarks?: TranslateRemark;
  },
  whole: Labels,
): View {
  const { delivery, evidence } = input.state;
  const labels = (input.copy?.entriesLeftOut ?? 0) > 0 ? redactedCopyLabels(whole) : whole;
  const format = formatFor(delivery.show, {
    zoneUnknown: labels('time.zone-unknown'),
    notKnown: labels('time.not-known'),
  });
  const stops = new Map(delivery.stops.map((stop) => [stop.id, stop]));
  const { remarks = untranslated, ...sentences } = templates;
  const names = factNames(delivery, remarks);
  const number = exhibitNumbers(input.exhibits);
  const items = new Map(evidence.map((item) => [item.evidence, item]));
  const ordered = [...evidence].sort(
    (a, b) =>
      (number(a.evidence) ?? Number.POSITIVE_INFINITY) - (number(b.evidence) ?? Number.POSITIVE_INFINITY),
  );
  const startZone = (delivery.stops.find((stop) => stop.does === 'load')?.zone ?? 'UTC') as Zone;
  const endZone = (delivery.stops.findLast((stop) => stop.does === 'unload')?.zone ?? startZone) as Zone;
  const exhibitsIn = (text: string) =>
    text.replace(/\be[1-9]\d*\b/g, (id) => {
      const shown = evidence.some((item) => item.evidence === id) ? number(id as EvidenceId) : undefined;
      return shown === undefined ? id : `${labels('document.exhibit').toLowerCase()} ${shown}`;
    });
  return {
    volume: input.volume ?? 'dossier',
    input,
    format,
    labels,
    names,
    compartment: compartmentIn(labels),
    words: wordsFrom({ ...sentences, labels, format, names }),
    remark: (group, text) => exhibitsIn(remarks(group, text)),
    number,
    item: (id) => items.get(id),
    of: <K extends EvidenceKind>(kind: K) => ordered.filter((item): item is ItemOf<K> => item.kind === kind),
    startZone,
    endZone,
    zoneOf: (stop) => (stop === undefined ? undefined : stops.get(stop)?.zone) ?? startZone,
  };
}

/** For whom an assessment is, and that it is confidential: it stands on each of its pages. A dossier is marked by nothing. */
export function confidentialWords({ volume, labels, input }: View): string | undefined {
  if (volume !== 'assessment') return undefined;
  const reader = input.copy?.title ?? labels('assessment.own-reader');
  return labels('assessment.confidential').replace('READER', () => reader);
}

/** Links to the exhibits of some evidence, as a cell. */
export function exhibitLinks(view: View, ids: readonly (EvidenceId | undefined)[], most = 8): Inline[] {
  const numbers = ids
    .flatMap((id) => (id === undefined ? [] : [view.number(id)]))
    .filter((n): n is number => n !== undefined)
    .sort((a, b) => a - b);
  const shown = numbers
    .slice(0, most)
    .flatMap((n, i): Inline[] => [...(i === 0 ? [] : [text(', ')]), { is: 'exhibit', number: n }]);
  return numbers.length > most
    ? [...shown, text(`, ${view.labels('exhibit.more').replace('N', String(numbers.length - most))}`)]
    : shown;
}

/** A cell of plain text. */
export const cell = (value: string | undefined): Cell =>
  value === undefined || value === '' ? [] : [text(value)];

/** Place of an item: the stop's place, the compartment, and the position in the load. */
export function placeText(view: View, item: EvidenceItem): string {
  const stop = item.place?.stop;
  const position = item.place?.position;
  return [
    ...(stop === undefined ? [] : [view.names.stop(stop)]),
    ...(item.place?.compartment === undefined ? [] : [view.compartment(item.place.compartment)]),
    ...(position === undefined ? [] : [view.labels(`position.${position}`)]),
  ].join(', ');
}

/** Whether evidence belongs to loading, transit or unloading; by its stop, else by its time. */
export function tripPartOf(view: View, item: EvidenceItem): 'load' | 'way' | 'unload' | undefined {
  const stop = view.input.state.delivery.stops.find((s) => s.id === item.place?.stop);
  if (stop !== undefined) return stop.does;
  const at = knownMilliseconds(item.time);
  const custody = view.input.assessment.temperatures[0]?.custody;
  if (at === undefined || custody === undefined) return undefined;
  if (at <= custody.from.at) return 'load';
  return at >= custody.to.at ? 'unload' : 'way';
}

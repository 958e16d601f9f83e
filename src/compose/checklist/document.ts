import type { Delivery, Language, Paper } from '../../core/model/delivery.js';
import { omitUndefined } from '../../core/model/omit-undefined.js';
import { celsius, fromCelsius, fromKelvin, kelvin } from '../../core/model/temperature.js';
import { type DocumentHead, typstPaperName } from '../../core/words/document-head.js';
import type { Labels } from '../../core/words/labels.js';
import { commonName } from '../view/names.js';
import { boxesOf, type ChecklistBox, type ChecklistPart, type ChecklistRow } from './box.js';
import { lineLetter } from './stop-parts.js';
import { boxLabel, choicesOf } from './words.js';

interface DrawnBox {
  number: number;
  label: string;
  /** Choices with their numbers, printed small below the label. */
  choices?: string;
}
type DrawnRow =
  | { is: 'boxes'; boxes: (DrawnBox & { width: number })[] }
  | { is: 'grid'; columns: string[]; rows: { title: string; under: string; boxes: DrawnBox[] }[] }
  | { is: 'strip'; boxes: DrawnBox[]; front: string; rear: string; legend: string[] }
  | { is: 'ticks'; title: string; items: string[] }
  | { is: 'lines'; box: DrawnBox; lines: number };

/** The JSON document of the form's pages. */
export interface ChecklistDocument extends DocumentHead {
  delivery: string;
  facts: { label: string; value: string }[];
  how: string;
  cautions: string;
  parts: { title: string; note: string; pageBreak: boolean; rows: DrawnRow[] }[];
  sign: { name: string; signature: string; day: string; says: string };
  foot: string;
  page: string;
  pageOf: string;
}

export interface ChecklistLayout {
  delivery: Delivery;
  language: Language;
  paper: Paper;
  labels: Labels;
}

/** The form's boxes with their words, ready to be typeset. */
export function checklistDocument(parts: readonly ChecklistPart[], look: ChecklistLayout): ChecklistDocument {
  const { delivery, language, paper, labels } = look;
  const firstInspection = parts.find(({ is }) => is === 'inspection');
  const { trailer, tractor, unit } = delivery.equipment;
  const value = (label: string, text: string | undefined) =>
    text === undefined ? [] : [{ label: labels(label), value: text }];
  const count = String(boxesOf(parts).length);
  return {
    language,
    region: 'US',
    paper: typstPaperName(paper),
    title: labels('checklist.title'),
    author: delivery.parties.carrier?.name ?? '',
    description: labels('checklist.description'),
    delivery: delivery.delivery,
    facts: [
      ...value('checklist.carrier', delivery.parties.carrier?.name),
      ...value('checklist.trailer', trailer.number),
      ...value('checklist.tractor', tractor?.number),
      ...value('checklist.unit', unit?.number),
    ],
    how: labels('checklist.how').replace('COUNT', count).replaceAll('UNIT', delivery.show.temperature),
    cautions: labels('checklist.cautions'),
    parts: parts.map((part) => ({
      title: partTitle(part, look),
      note: partNote(part, look),
      pageBreak: part.is === 'transit' || part === firstInspection,
      rows: part.rows.map((row) => drawnRow(row, look)),
    })),
    sign: {
      name: labels('checklist.name'),
      signature: labels('checklist.signature'),
      day: labels('box.day'),
      says: labels('checklist.says'),
    },
    foot: labels('checklist.foot').replace('DELIVERY', () => delivery.delivery),
    page: labels('checklist.page'),
    pageOf: labels('checklist.page-of'),
  };
}

/** The place is in the heading of a stop's first part, and in the others only where there are several such stops. */
function partTitle(part: ChecklistPart, { delivery, labels }: ChecklistLayout): string {
  const stop = delivery.stops.find(({ id }) => id === part.stop);
  const title = labels(`part.${part.is}`);
  if (stop === undefined) return title;
  const first = part.is === 'before' || part.is === 'arrival';
  const alike = delivery.stops.filter(({ does }) => does === stop.does);
  return first || alike.length > 1 ? `${title} · ${stop.place}` : title;
}

/** Words under a part's heading: the clock of the times, and what matters while filling it in. */
function partNote(part: ChecklistPart, { delivery, labels }: ChecklistLayout): string {
  const stops = delivery.stops;
  const stop = stops.find(({ id }) => id === part.stop);
  const zone = (name: string) => labels('checklist.clock').replace('ZONE', name.replaceAll('_', ' '));
  const own = labels.find(`note.${part.is}`);
  if (part.is === 'transit')
    return [zone(stops.find((one) => one.does === 'load')?.zone ?? ''), own ?? ''].join(' ').trim();
  if ((part.is === 'before' || part.is === 'arrival') && stop !== undefined)
    return [zone(stop.zone), own ?? ''].join(' ').trim();
  // A grid has no room for its choices.
  const choices = part.rows.flatMap((row) =>
    row.is === 'grid'
      ? row.rows.flatMap(({ boxes }) => boxes.flatMap(({ question }) => choicesOf(question, labels) ?? []))
      : [],
  );
  const [first] = choices;
  return [own ?? '', ...(first === undefined ? [] : [`${labels('outcome.why')}: ${first}`])].join(' ').trim();
}

function drawnRow(row: ChecklistRow, look: ChecklistLayout): DrawnRow {
  const { labels, delivery } = look;
  const drawn = (box: ChecklistBox): DrawnBox => {
    const choices = box.question.is === 'row' ? undefined : choicesOf(box.question, labels);
    return {
      number: box.number,
      label: boxLabel(box.question, labels),
      ...omitUndefined({ choices }),
    };
  };
  switch (row.is) {
    case 'boxes':
      return { is: 'boxes', boxes: row.boxes.map(({ box, width }) => ({ ...drawn(box), width })) };
    case 'grid':
      return {
        is: 'grid',
        columns: row.columns.map(
          (name) =>
            labels.find(`position.${name}`) ?? labels.find(`outcome.${name}`) ?? labels(`unit-check.${name}`),
        ),
        rows: row.rows.map(({ line, letter, count, boxes }) => ({
          title: line === undefined ? String(count ?? '') : `${letter ?? ''}  ${lineName(line, delivery)}`,
          under: line === undefined ? '' : askedFor(line, look),
          boxes: boxes.map(drawn),
        })),
      };
    case 'strip': {
      const [first] = row.boxes;
      const choices = first === undefined ? undefined : choicesOf(first.question, labels);
      const stop = first?.question.is === 'row' ? first.question.stop : undefined;
      return {
        is: 'strip',
        boxes: row.boxes.map(drawn),
        front: labels('checklist.nose'),
        rear: labels('checklist.doors'),
        legend: [
          choices ?? '',
          delivery.lines
            .filter(({ from }) => from === stop)
            .map(({ id }) => `${lineLetter(id, delivery.lines)}\u00a0${lineName(id, delivery)}`)
            .join('   '),
        ],
      };
    }
    case 'ticks':
      return {
        is: 'ticks',
        title: labels('checklist.photos'),
        items: row.photos.map((name) => labels(`photo.${name}`)),
      };
    case 'lines':
      return { is: 'lines', box: drawn(row.box), lines: row.lines };
  }
}

function lineName(id: string, { lines }: Delivery): string {
  const line = lines.find((one) => one.id === id);
  return line === undefined ? id : (line.name ?? commonName(line.goods));
}

/** `36 °F ± 2`, the bill's instruction in the delivery file; empty without one. */
function askedFor(id: string, { delivery, labels }: ChecklistLayout): string {
  const asked = delivery.lines.find((one) => one.id === id)?.instruction;
  if (asked === undefined) return labels('checklist.no-temperature');
  const unit = delivery.show.temperature;
  const shown = (value: number) => String(Math.round(value * 10) / 10);
  const width = asked.tolerance === undefined ? '' : ` ± ${shown(fromKelvin(kelvin(asked.tolerance), unit))}`;
  return `${labels('checklist.asked')} ${shown(fromCelsius(celsius(asked.setPoint), unit))}\u00a0${unit}${width}`;
}

import type { EvidenceId, Signatory } from '../../core/model/evidence.js';
import type { ItemOf } from '../../core/model/state.js';
import { formatAmount } from '../../core/words/amounts.js';
import { signatoryWords } from '../../core/words/outcome-said.js';
import type { View } from './context.js';

interface Signed {
  writtenBy?: Signatory | undefined;
  signedBy?: readonly Signatory[] | undefined;
  documents: readonly EvidenceId[];
  document?: string | undefined;
}

/** An exception at loading in words: what is written, of how much and which line, who signed it, and on which document. */
export function exceptionParts(view: View, item: ItemOf<'exception'>): string[] {
  const { labels, format, names } = view;
  return [
    `“${item.words}”`,
    ...(item.line === undefined ? [] : [names.line(item.line)]),
    ...(item.quantity === undefined
      ? []
      : [formatAmount(labels, format, { value: Number(item.quantity.amount), unit: item.quantity.unit })]),
    ...item.reasons.map((reason) => labels(`outcome-reason.${reason}`)),
    ...paperParts(view, item),
  ];
}

/** Who wrote it, who signed it, and on which document it stands. */
export function paperParts(
  { labels, number }: View,
  { writtenBy, signedBy = [], documents, document }: Signed,
): string[] {
  const papers = documents.flatMap((id) => {
    const exhibit = number(id);
    return exhibit === undefined ? [] : [`${labels('document.exhibit').toLowerCase()} ${exhibit}`];
  });
  const on = [...papers, ...(document === undefined ? [] : [document])];
  return [
    ...(writtenBy === undefined
      ? []
      : [`${labels('exception.written-by')} ${signatoryWords(labels, writtenBy)}`]),
    ...(signedBy.length === 0
      ? []
      : [
          `${labels('exception.signed-by')} ${signedBy.map((one) => signatoryWords(labels, one)).join(', ')}`,
        ]),
    ...(on.length === 0 ? [] : [`${labels('goods-outcome.on')} ${on.join(', ')}`]),
  ];
}

/** A particular in words: what it is of, who, how many, what is stated, and on which document. */
export function particularParts(view: View, item: ItemOf<'particular'>): string[] {
  const { labels, format, names } = view;
  return [
    labels(`particular.${item.of}`),
    ...(item.who === undefined ? [] : [signatoryWords(labels, item.who)]),
    ...(item.line === undefined ? [] : [names.line(item.line)]),
    ...(item.quantity === undefined
      ? []
      : [formatAmount(labels, format, { value: Number(item.quantity.amount), unit: item.quantity.unit })]),
    ...(item.words === undefined ? [] : [item.words]),
    ...paperParts(view, item),
  ];
}

/** An instrument in words: what it is, its numbers, whose, where, its calibration and its checks in ice water. */
export function instrumentParts(view: View, item: ItemOf<'instrument'>): string[] {
  const { labels, format } = view;
  const said = (name: string, value: string | undefined) =>
    value === undefined ? [] : [`${labels(`instrument.${name}`)} ${value}`];
  const degrees = (t: ItemOf<'instrument'>['iceBefore']) =>
    t === undefined ? undefined : `${format.number(t.value, 1)}\u00a0${t.unit}`;
  return [
    `${labels(`instrument-type.${item.type}`)} ${item.name}`,
    ...said('serial', item.serial === item.name ? undefined : item.serial),
    ...said('owner', item.owner === undefined ? undefined : signatoryWords(labels, item.owner)),
    ...(item.where === undefined ? [] : [item.where]),
    ...said('accuracy', item.accuracy),
    ...said('certificate', item.certificate),
    ...said('calibrated', item.calibrated),
    ...said('serviced', item.serviced),
    ...said('software', item.software),
    ...said('ice-before', degrees(item.iceBefore)),
    ...said('ice-after', degrees(item.iceAfter)),
    ...paperParts(view, item),
  ];
}

import type { InspectedDefect } from '../../core/model/evidence.js';
import type { TradeQuantity } from '../../core/model/quantity.js';
import type { ItemOf } from '../../core/model/state.js';
import { formatAmount } from '../../core/words/amounts.js';
import type { View } from './context.js';

/** `tipburn 8 % (3 % serious, condition)`. */
export function defectWords(
  { format, labels }: Pick<View, 'format' | 'labels'>,
  {
    name,
    percent,
    serious,
    nature,
  }: Pick<InspectedDefect, 'percent' | 'serious' | 'nature'> & {
    name?: string;
  },
): string {
  const share = (value: number) => percentText(format, value);
  const beside = [
    ...(serious === undefined ? [] : [`${share(serious)} ${labels('inspection.serious')}`]),
    ...(nature === undefined ? [] : [labels(`inspection.nature-${nature}`)]),
  ];
  const said = name === undefined ? share(percent) : `${name} ${share(percent)}`;
  return beside.length === 0 ? said : `${said} (${beside.join(', ')})`;
}

/** A certificate in words: the lot, how much, what was seen, and who asked for it. */
export function inspectionParts(view: View, item: ItemOf<'inspection'>): string[] {
  const { labels, format, names } = view;
  const degrees = ({ value, unit }: { value: number; unit: string }) =>
    `${format.number(value, 1)}\u00a0${unit}`;
  const { count, samples, pulps, total, requestedBy, requestedAt } = item;
  const asked = [
    ...(requestedBy === undefined ? [] : [`${labels('inspection.by')} ${requestedBy}`]),
    ...(requestedAt === undefined ? [] : [format.eventTime(requestedAt)]),
  ];
  return [
    [
      `${labels('inspection.lot')} ${item.lot}`,
      ...(item.line === undefined ? [] : [names.line(item.line)]),
      ...(count === undefined ? [] : [amountText(view, count)]),
      ...(samples === undefined ? [] : [samplesText(view, samples)]),
    ].join(', '),
    ...item.defects.map((defect) => defectWords(view, defect)),
    ...(total === undefined ? [] : [`${labels('inspection.total')} ${defectWords(view, total)}`]),
    ...(pulps === undefined
      ? []
      : [`${labels('inspection.pulps')} ${degrees(pulps.low)} – ${degrees(pulps.high)}`]),
    ...(item.certificate === undefined ? [] : [`${labels('inspection.certificate')} ${item.certificate}`]),
    ...(item.appeal === undefined ? [] : [labels('inspection.appeal')]),
    ...(item.where === undefined ? [] : [item.where]),
    ...(item.ended === undefined ? [] : [`${labels('inspection.ended')} ${format.eventTime(item.ended)}`]),
    ...(asked.length === 0 ? [] : [`${labels('inspection.requested')} ${asked.join(', ')}`]),
    ...inspectionNotes(view, item),
  ];
}

/** What a dumping certificate shows besides (7 CFR 46.23). */
export function inspectionNotes(view: View, item: ItemOf<'inspection'>): string[] {
  const { labels } = view;
  return [
    ...(item.dumped === undefined ? [] : [`${amountText(view, item.dumped)} ${labels('inspection.dumped')}`]),
    ...(item.noCommercialValue === undefined ? [] : [labels('inspection.no-commercial-value')]),
    ...(item.certifiedBy === undefined ? [] : [labels(`inspection.certified-${item.certifiedBy}`)]),
    ...[item.marks, item.shipper].filter((one) => one !== undefined),
  ];
}

const amountText = ({ labels, format }: View, { amount, unit }: TradeQuantity): string =>
  formatAmount(labels, format, { value: Number(amount), unit });

export const samplesText = ({ labels }: Pick<View, 'labels'>, samples: number): string =>
  samples === 1 ? labels('inspection.sample') : labels('inspection.samples').replace('N', String(samples));

/** `8 %`, `4.13 %`: as many decimals as were written, at most two. */
export function percentText(format: Pick<View['format'], 'number'>, value: number): string {
  const decimals = [0, 1, 2].find((places) => Math.abs(value - Number(value.toFixed(places))) < 1e-9) ?? 2;
  return `${format.number(value, decimals)}\u00a0%`;
}

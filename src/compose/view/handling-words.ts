import { axleGroup } from '../../core/model/evidence.js';
import type { ItemOf } from '../../core/model/state.js';
import type { Weight } from '../../core/model/weight.js';
import type { View } from './context.js';

/** A weight as it was stated: `11,840 lb`. */
export const weightText = ({ format }: View, { value, unit }: Weight): string =>
  `${format.number(value, Number.isInteger(value) ? 0 : 2)}\u00a0${unit}`;

/** What a scale showed, group by group. */
export function scaleParts(view: View, item: ItemOf<'scale'>): string[] {
  const { labels } = view;
  const groups = [...axleGroup.options, 'gross' as const].flatMap((name) => {
    const weighed = item[name];
    return weighed === undefined ? [] : [`${labels(`axle.${name}`)} ${weightText(view, weighed)}`];
  });
  return [...groups, ...(item.ticket === undefined ? [] : [`${labels('axle.ticket')} ${item.ticket}`])];
}

/** What a recorder marked: how strong, how long, which way, against which threshold. */
export function shockParts(view: View, item: ItemOf<'shock'>): string[] {
  const { labels, format } = view;
  return [
    labels(`shock.${item.what}`),
    ...(item.peak === undefined ? [] : [format.acceleration(item.peak)]),
    ...(item.milliseconds === undefined
      ? []
      : [`${format.number(item.milliseconds, Number.isInteger(item.milliseconds) ? 0 : 1)}\u00a0ms`]),
    ...(item.axis === undefined ? [] : [labels(`shock-axis.${item.axis}`)]),
    ...(item.threshold === undefined
      ? []
      : [`${labels('shock.threshold')} ${format.acceleration(item.threshold)}`]),
    ...(item.instrument === undefined ? [] : [item.instrument]),
  ];
}

/** Pallets as they were found, where, and on which photographs. */
export function palletParts(view: View, item: ItemOf<'pallets'>): string[] {
  const { labels, names, number, format } = view;
  const photos = item.documents.flatMap((id) => number(id) ?? []);
  return [
    ...(item.count === undefined ? [] : [format.number(item.count)]),
    labels(`pallets.${item.state}`),
    ...(item.rows === undefined
      ? []
      : [
          `${labels('load.rows')} ${item.rows.from === item.rows.to ? item.rows.from : `${item.rows.from}–${item.rows.to}`}`,
        ]),
    ...(item.line === undefined ? [] : [names.line(item.line)]),
    ...(item.note === undefined ? [] : [item.note]),
    ...photos.map((one) => `${labels('document.exhibit').toLowerCase()} ${one}`),
  ];
}

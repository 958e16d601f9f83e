import type { Stop } from '../../core/model/delivery.js';
import { type References, referenceKind } from '../../core/model/references.js';
import type { Labels } from '../../core/words/labels.js';

/** `BOL 0044719; PRO 771; PO 8812, 8813`, in a fixed order; empty without any. */
export function referenceText(labels: Labels, references: References | undefined): string {
  return referenceKind.options
    .flatMap((kind) => {
      const numbers = references?.[kind] ?? [];
      return numbers.length === 0 ? [] : [`${labels(`reference.${kind}`)} ${numbers.join(', ')}`];
    })
    .join('; ');
}

/** Who receives or ships at a stop, with the numbers of the stop. */
export function stopParty(labels: Labels, { party, references }: Stop): string[] {
  const numbers = referenceText(labels, references);
  return [
    ...(party === undefined
      ? []
      : [[party.name, party.address].filter((one) => one !== undefined).join(', ')]),
    ...(numbers === '' ? [] : [numbers]),
  ];
}

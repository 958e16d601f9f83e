import type { Finding } from '../../core/model/results.js';
import type { Labels } from '../../core/words/labels.js';

/** A compartment in words: `compartment front`. */
export const compartmentIn =
  (labels: Labels) =>
  (id: string): string =>
    labels('compartment.named').replace('NAME', () => id);

/** What stands before the sentence of a finding about one compartment: `Compartment front: `. */
export const findingPlace = (labels: Labels, { compartment }: Finding): string =>
  compartment === undefined ? '' : labels('compartment.finding').replace('NAME', () => compartment);

import type { ItemOf, RecordState } from '../model/state.js';

/** Seal numbers are compared without letter case, spaces and dashes. */
export const sealKey = (number: string) => number.toUpperCase().replace(/[^\p{L}\p{N}]/gu, '');

const seals = (state: RecordState) =>
  state.evidence.filter((item): item is ItemOf<'seal'> => item.kind === 'seal');

/** Seals recorded as applied. */
export const appliedSeals = (state: RecordState) => seals(state).filter((item) => item.state === 'applied');

/** Seals checked at an unloading stop, in whatever state. */
export const foundSeals = (state: RecordState) => {
  const unloading = new Set(
    state.delivery.stops.filter((stop) => stop.does === 'unload').map(({ id }) => id),
  );
  return seals(state).filter((item) => item.state !== 'applied' && unloading.has(item.place?.stop ?? ''));
};

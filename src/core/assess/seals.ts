import type { ItemOf, RecordState } from '../model/state.js';
import { knownMilliseconds } from '../model/time.js';

/** Seal numbers are compared without letter case, spaces and dashes. */
export const sealKey = (number: string) => number.toUpperCase().replace(/[^\p{L}\p{N}]/gu, '');

const seals = (state: RecordState) =>
  state.evidence.filter((item): item is ItemOf<'seal'> => item.kind === 'seal');

/**
 * Seals that were on the doors as the carrier took the goods over or closed them again: applied, at whatever stop, or
 * found whole where the goods were loaded, as on a trailer that was picked up sealed.
 */
export const appliedSeals = (state: RecordState) => {
  const loading = new Set(state.delivery.stops.filter((stop) => stop.does === 'load').map(({ id }) => id));
  return seals(state).filter(
    (item) => item.state === 'applied' || (item.state === 'intact' && loading.has(item.place?.stop ?? '')),
  );
};

/**
 * The seals that a found one is compared with: those put on at the last stop before it, since doors are sealed anew at
 * each drop; all of them where times do not tell.
 */
export function sealsBefore(
  applied: readonly ItemOf<'seal'>[],
  found: ItemOf<'seal'>,
): readonly ItemOf<'seal'>[] {
  const at = knownMilliseconds(found.time);
  const earlier = applied.filter(
    (item) => at !== undefined && (knownMilliseconds(item.time) ?? Number.POSITIVE_INFINITY) <= at,
  );
  const last = earlier.reduce<ItemOf<'seal'> | undefined>(
    (late, one) =>
      late === undefined || (knownMilliseconds(one.time) ?? 0) > (knownMilliseconds(late.time) ?? 0)
        ? one
        : late,
    undefined,
  );
  const own = earlier.filter((item) => item.place?.stop === last?.place?.stop);
  return own.length === 0 ? applied : own;
}

/** Seals checked at an unloading stop, in whatever state. */
export const foundSeals = (state: RecordState) => {
  const unloading = new Set(
    state.delivery.stops.filter((stop) => stop.does === 'unload').map(({ id }) => id),
  );
  return seals(state).filter((item) => item.state !== 'applied' && unloading.has(item.place?.stop ?? ''));
};

import type { EvidenceItem, ItemOf } from '../../model/state.js';

type Photo = ItemOf<'photo'>;

/**
 * The name of a camera's clock: make, model and serial number as far as the photo states them. Two cameras of one
 * model without serial numbers share a name; where their clocks differ the comparison is unsteady, and nothing is
 * corrected.
 */
export function cameraName({ camera }: Pick<Photo, 'camera'>): string | undefined {
  const parts = [camera?.make, camera?.model, camera?.serial].filter((part) => part !== undefined);
  return parts.length === 0 ? undefined : parts.join(' ');
}

/** The photos of each camera that names itself, in the order of the record. */
export function photosByCamera(evidence: readonly EvidenceItem[]): Map<string, Photo[]> {
  const found = new Map<string, Photo[]>();
  for (const item of evidence) {
    if (item.kind !== 'photo') continue;
    const name = cameraName(item);
    if (name === undefined) continue;
    const list = found.get(name);
    if (list === undefined) found.set(name, [item]);
    else list.push(item);
  }
  return found;
}

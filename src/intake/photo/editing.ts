import type { Flag } from '../../core/model/evidence.js';
import { toLocalTime } from '../time/wall-time.js';
import { exifWall } from './capture-time.js';
import type { RawExif } from './exif.js';

/** Editing software by its name in the Software tag; a phone's own system writes only its version. */
const EDITORS =
  /photoshop|lightroom|gimp|snapseed|paint|pixelmator|affinity|darktable|rawtherapee|acdsee|imagemagick|picsart|canva|photos? editor|editor/i;
const LATER = 60_000;

/** Traces of editing: an editor's name, or a time of change later than the time of capture. */
export function editingTraces(exif: RawExif): Flag[] {
  const traces: string[] = [];
  if (exif.software !== undefined && EDITORS.test(exif.software)) traces.push(`written by ${exif.software}`);
  const taken = exifWall(exif.dateTimeOriginal);
  const changed = exifWall(exif.modifyDate);
  if (taken !== undefined && changed !== undefined && changed - taken > LATER)
    traces.push(`changed at ${toLocalTime(changed)}, taken at ${toLocalTime(taken)}`);
  return traces.length === 0 ? [] : [{ is: 'edited', detail: traces.join('; ') }];
}

import type { EvidenceId } from '../core/model/evidence.js';
import type { Exhibit } from '../core/model/manifest.js';
import { omitUndefined } from '../core/model/omit-undefined.js';
import type { EvidenceItem, RecordState } from '../core/model/state.js';
import { knownMilliseconds } from '../core/model/time.js';

/** Numbers all evidence as exhibits: by time, then by entry; evidence without a known time comes last. */
export function numberExhibits(state: RecordState): Exhibit[] {
  const time = (item: EvidenceItem) => knownMilliseconds(item.time) ?? Number.POSITIVE_INFINITY;
  return [...state.evidence]
    .sort((a, b) => {
      const [x, y] = [time(a), time(b)];
      return x === y ? a.seq - b.seq : x - y;
    })
    .map((item, i) => ({
      exhibit: i + 1,
      evidence: item.evidence,
      seq: item.seq,
      kind: item.kind,
      ...omitUndefined({ file: 'file' in item ? item.file : undefined }),
    }));
}

/** Looks up exhibit numbers by evidence id. */
export function exhibitNumbers(exhibits: readonly Exhibit[]): (id: EvidenceId) => number | undefined {
  const numbers = new Map(exhibits.map((e) => [e.evidence, e.exhibit]));
  return (id) => numbers.get(id);
}

import type { EvidenceId } from '../../model/evidence.js';
import type { NearMiss } from '../../model/results.js';

/** How one need of a rule stands. */
export interface NeedVerdict {
  outcome: 'met' | 'short' | 'missing' | 'contradicted';
  counted: EvidenceId[];
  nearly: NearMiss[];
  against: EvidenceId[];
  /** What is lacking, and what a reader should know of what counts. */
  lacking: string[];
}

export const nothing = (): NeedVerdict => ({
  outcome: 'missing',
  counted: [],
  nearly: [],
  against: [],
  lacking: [],
});

function union<T>(lists: readonly (readonly T[])[], key: (value: T) => string): T[] {
  const found = new Map<string, T>();
  for (const value of lists.flat()) if (!found.has(key(value))) found.set(key(value), value);
  return [...found.values()];
}

function gather(parts: readonly NeedVerdict[]): Omit<NeedVerdict, 'outcome'> {
  const counted = union(
    parts.map((part) => part.counted),
    (id) => id,
  );
  return {
    counted,
    nearly: union(
      parts.map((part) => part.nearly),
      (miss) => `${miss.evidence} ${miss.why}`,
    ).filter((miss) => !counted.includes(miss.evidence)),
    against: union(
      parts.map((part) => part.against),
      (id) => id,
    ),
    lacking: [...new Set(parts.flatMap((part) => part.lacking))],
  };
}

/** Every part must be met; one that is contradicted contradicts the whole. */
export function combineAll(parts: readonly NeedVerdict[]): NeedVerdict {
  const all = gather(parts);
  if (parts.some((part) => part.outcome === 'contradicted')) return { outcome: 'contradicted', ...all };
  if (parts.every((part) => part.outcome === 'met')) return { outcome: 'met', ...all };
  return { outcome: all.counted.length > 0 ? 'short' : 'missing', ...all };
}

/** One part that is met is enough, and then only that part's words are kept. */
export function combineAny(parts: readonly NeedVerdict[]): NeedVerdict {
  const met = parts.filter((part) => part.outcome === 'met');
  if (met.length > 0) return { outcome: 'met', ...gather(met), against: [] };
  const all = gather(parts);
  const ways = parts.map((part) => part.lacking.join(', ')).filter((words) => words !== '');
  const lacking = ways.length > 1 ? [`one of: ${ways.join('; or ')}`] : ways;
  const worst = (['contradicted', 'short'] as const).find((outcome) =>
    parts.some((part) => part.outcome === outcome),
  );
  return { outcome: worst ?? 'missing', ...all, lacking };
}

/** Nothing of this may be in the record; what is there speaks against the rule. */
export function combineNone(parts: readonly NeedVerdict[]): NeedVerdict {
  const against = union(
    parts.map((part) => part.counted),
    (id) => id,
  );
  const broken = parts.some((part) => part.outcome === 'met') || against.length > 0;
  if (!broken) return { ...nothing(), outcome: 'met' };
  return { ...nothing(), outcome: 'contradicted', against, lacking: ['what should not be there is there'] };
}

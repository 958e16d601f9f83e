import type { EvidenceId } from '../../model/evidence.js';
import type { RejectedEvidence, Shortfall } from '../../model/results.js';
import { shortfall, shortfallKey } from './shortfalls.js';

/** The verdict on one need of a rule. */
export interface NeedVerdict {
  outcome: 'met' | 'short' | 'missing' | 'contradicted';
  counted: EvidenceId[];
  rejected: RejectedEvidence[];
  against: EvidenceId[];
  lacking: Shortfall[];
  /** Remarks on the counted evidence. */
  notes: Shortfall[];
}

export const emptyVerdict = (): NeedVerdict => ({
  outcome: 'missing',
  counted: [],
  rejected: [],
  against: [],
  lacking: [],
  notes: [],
});

/** The members of several lists, each once, in the order of first appearance. */
export function union<T>(lists: readonly (readonly T[])[], key: (value: T) => string): T[] {
  const found = new Map<string, T>();
  for (const value of lists.flat()) {
    const name = key(value);
    if (!found.has(name)) found.set(name, value);
  }
  return [...found.values()];
}

/** Several verdicts merged, without an outcome. */
export function merge(parts: readonly Omit<NeedVerdict, 'outcome'>[]): Omit<NeedVerdict, 'outcome'> {
  const [only] = parts;
  if (parts.length === 1 && only !== undefined) {
    const { counted, rejected, against, lacking, notes } = only;
    return { counted, rejected, against, lacking, notes };
  }
  const ids = (field: 'counted' | 'against') => [...new Set(parts.flatMap((part) => part[field]))];
  const counted = ids('counted');
  const isCounted = new Set<EvidenceId>(counted);
  return {
    counted,
    rejected: union(
      parts.map((part) => part.rejected),
      (miss) => `${miss.evidence} ${miss.why}`,
    ).filter((miss) => !isCounted.has(miss.evidence)),
    against: ids('against'),
    lacking: union(
      parts.map((part) => part.lacking),
      shortfallKey,
    ),
    notes: union(
      parts.map((part) => part.notes),
      shortfallKey,
    ),
  };
}

/** Every part must be met; one contradicted part contradicts the whole. */
export function combineAll(parts: readonly NeedVerdict[]): NeedVerdict {
  const all = merge(parts);
  if (parts.some((part) => part.outcome === 'contradicted')) return { outcome: 'contradicted', ...all };
  if (parts.every((part) => part.outcome === 'met')) return { outcome: 'met', ...all, lacking: [] };
  const some = all.counted.length > 0 || parts.some((part) => part.outcome === 'short');
  return { outcome: some ? 'short' : 'missing', ...all };
}

/** One met part suffices, and only what concerns met parts is kept. */
export function combineAny(parts: readonly NeedVerdict[]): NeedVerdict {
  const met = parts.filter((part) => part.outcome === 'met');
  if (met.length > 0) return { outcome: 'met', ...merge(met), against: [], lacking: [] };
  const all = merge(parts);
  const ways = union(
    parts.map((part) => (part.lacking.length === 0 ? [] : [part.lacking])),
    (way) => way.map(shortfallKey).join(),
  );
  const [only] = ways;
  const lacking = ways.length > 1 ? [{ is: 'one-of', facts: {}, ways }] : (only ?? []);
  const worst = (['contradicted', 'short'] as const).find((outcome) =>
    parts.some((part) => part.outcome === outcome),
  );
  return { outcome: worst ?? 'missing', ...all, lacking };
}

/** Evidence that must not be on file; what is there contradicts the rule. */
export function combineNone(parts: readonly NeedVerdict[]): NeedVerdict {
  const against = [...new Set(parts.flatMap((part) => part.counted))];
  if (against.length === 0 && !parts.some((part) => part.outcome === 'met'))
    return { ...emptyVerdict(), outcome: 'met' };
  return {
    ...emptyVerdict(),
    outcome: 'contradicted',
    against,
    lacking: [shortfall('should-not-be', { count: against.length })],
  };
}

import type { Finding, FindingQuantity } from '../../core/model/results.js';
import type { FactNames } from '../../core/words/facts.js';

/** Most findings on the first page, so that it can be read in five minutes. */
export const MOST_LINES = 7;
/** Fewest findings of each side on the first page, where the record has them. */
const LEAST_OF_SIDE = { hurts: 2, helps: 2, open: 1 } as const;

/**
 * Findings that another finding of the same line implies. Only one on the same side is left out: a finding against
 * the carrier never gives way to one for it.
 */
const IMPLIED_BY: Readonly<Record<string, readonly string[]>> = {
  'pulps-at-loading-above-band': ['arrival-supports-origin'],
  'pulps-at-delivery-above-band': ['warmed-on-the-way', 'warm-at-delivery-no-loading-pulps'],
  'pulps-at-loading-in-band': ['warmed-on-the-way'],
};
/** Findings that several lines can share word for word, apart from their pulps. */
const SHARED = new Set(['pulps-at-delivery-in-band', 'pulps-at-loading-in-band']);

/** A finding on the first page, and how many of the list it represents. */
export interface CoverFinding {
  finding: Finding;
  standsFor: number;
}

/**
 * Findings of the first page, heaviest first: at most seven, from both sides where there are both; equal sentences
 * are merged, and findings that a heavier one of the same side implies are left out.
 */
export function coverFindings(findings: readonly Finding[], names: FactNames, and: string): CoverFinding[] {
  const ranked = merged(
    [...findings].sort((a, b) => b.weight - a.weight),
    names,
    and,
  );
  const needed = new Set<CoverFinding>();
  for (const [side, least] of Object.entries(LEAST_OF_SIDE))
    for (const one of ranked.filter(({ finding }) => finding.weighs === side).slice(0, least))
      needed.add(one);
  const free = MOST_LINES - needed.size;
  const others = ranked.filter((one) => !needed.has(one)).slice(0, Math.max(0, free));
  const chosen = new Set([...needed, ...others]);
  return ranked.filter((one) => chosen.has(one));
}

function merged(ranked: readonly Finding[], names: FactNames, and: string): CoverFinding[] {
  const groups = new Map<string, Finding[]>();
  for (const finding of ranked) {
    if (isImplied(finding, ranked)) continue;
    const key = SHARED.has(finding.id)
      ? sharedKey(finding)
      : JSON.stringify([finding.id, finding.compartment, finding.facts]);
    groups.set(key, [...(groups.get(key) ?? []), finding]);
  }
  return [...groups.values()].flatMap((group) => {
    const [first, ...rest] = group;
    if (first === undefined) return [];
    return [
      { finding: rest.length === 0 ? first : asOne(first, group, names, and), standsFor: group.length },
    ];
  });
}

function isImplied(finding: Finding, all: readonly Finding[]): boolean {
  const by = IMPLIED_BY[finding.id] ?? [];
  return all.some(
    (other) => by.includes(other.id) && other.weighs === finding.weighs && lineOf(other) === lineOf(finding),
  );
}

const lineOf = ({ facts }: Finding): string | undefined => {
  const { line } = facts;
  return typeof line === 'object' && line.is === 'line' ? line.line : undefined;
};
const sharedKey = ({ id, weighs, facts }: Finding) => JSON.stringify([id, weighs, facts.low, facts.high]);

function asOne(first: Finding, group: readonly Finding[], names: FactNames, and: string): Finding {
  const lines = group.map((one) => names.line(lineOf(one) ?? ''));
  const last = lines.at(-1) ?? '';
  return {
    ...first,
    evidence: [...new Set(group.flatMap((one) => one.evidence))],
    facts: {
      ...first.facts,
      line: lines.length < 2 ? last : `${lines.slice(0, -1).join('; ')} ${and} ${last}`,
      count: group.reduce((sum, { facts }) => sum + (typeof facts.count === 'number' ? facts.count : 0), 0),
      ...extreme('min', group, Math.min),
      ...extreme('max', group, Math.max),
    },
  };
}

function extreme(
  name: 'min' | 'max',
  group: readonly Finding[],
  of: (...values: number[]) => number,
): Record<string, FindingQuantity> {
  const values = group.flatMap(({ facts }) => {
    const value = facts[name];
    return typeof value === 'object' && value.is === 'temperature' ? [value.celsius] : [];
  });
  return values.length === 0 ? {} : { [name]: { is: 'temperature', celsius: of(...values) } };
}

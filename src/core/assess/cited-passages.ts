import type { Assessment, PublishedLimit } from '../model/results.js';

/** Passages of publications that the results rest on, each once: those of findings first, by weight, then the others. */
export function citedPassages({ findings, setPoints, margins }: Assessment): readonly string[] {
  const byWeight = [...findings].sort((a, b) => b.weight - a.weight);
  const limits: PublishedLimit[] = [
    ...byWeight.flatMap(({ facts }) =>
      Object.values(facts).flatMap((fact) =>
        typeof fact === 'object' && fact.is === 'published' ? fact.by : [],
      ),
    ),
    ...(setPoints.legs ?? []).flatMap((leg) => leg.published),
    ...(margins ?? []).flatMap(({ freezing, chilling, range }) => [
      ...(freezing?.points ?? []),
      ...(range?.bySource ?? []),
      ...(chilling?.limits ?? []),
    ]),
  ];
  return [...new Set(limits.map(({ passage }) => passage))];
}

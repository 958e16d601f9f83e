import { describe, expect, it } from 'vitest';
import { coverFindings, MOST_LINES } from '../../src/compose/view/cover-lines.js';
import type { EvidenceId } from '../../src/core/model/evidence.js';
import type { Finding } from '../../src/core/model/results.js';

const names = { line: (id: string) => id, stop: (id: string) => id };
const made = (
  id: string,
  weighs: Finding['weighs'],
  weight: number,
  facts: Finding['facts'] = {},
): Finding => ({
  id,
  weighs,
  weight,
  element: 'care-in-transit',
  evidence: [`e${weight}` as EvidenceId],
  by: 'a test',
  facts: { n: weight, ...facts },
});
const shown = (all: readonly Finding[]) => coverFindings(all, names, 'and').map(({ finding }) => finding);
const degrees = (celsius: number) => ({ is: 'temperature', celsius }) as const;
const line = (name: string) => ({ is: 'line', line: name }) as const;

describe('the lines of the first page', () => {
  it.each([
    ['against', 'hurts', 'helps'],
    ['for', 'helps', 'hurts'],
  ] as const)('have what speaks %s the carrier, however heavy the other side is', (_, light, heavy) => {
    const all = [
      ...Array.from({ length: 12 }, (_unused, i) => made(`heavy-${i}`, heavy, 99 - i)),
      made('light-1', light, 3),
      made('light-2', light, 2),
      made('light-3', light, 1),
    ];
    const chosen = shown(all);
    expect(chosen).toHaveLength(MOST_LINES);
    expect(chosen.filter((one) => one.weighs === light).map((one) => one.id)).toEqual(['light-1', 'light-2']);
    expect(chosen.map((one) => one.weight)).toEqual(chosen.map((one) => one.weight).sort((a, b) => b - a));
  });

  it('say once what several lines share, with the pulps of all', () => {
    const band = { low: degrees(1), high: degrees(3) };
    const one = (name: string, count: number, min: number, max: number, weight: number) => ({
      ...made('pulps-at-delivery-in-band', 'helps', weight),
      facts: { line: line(name), count, min: degrees(min), max: degrees(max), ...band },
    });
    const [merged, ...rest] = coverFindings(
      [one('celery', 4, 2, 2.5, 90), one('broccoli', 3, 1.5, 2.2, 89)],
      names,
      'and',
    );
    expect(rest).toEqual([]);
    expect(merged).toMatchObject({
      standsFor: 2,
      finding: {
        evidence: ['e90', 'e89'],
        facts: { line: 'celery and broccoli', count: 7, min: degrees(1.5), max: degrees(2.5) },
      },
    });
  });

  it('do not merge lines that were asked for at different temperatures', () => {
    const one = (name: string, high: number) => ({
      ...made('pulps-at-delivery-in-band', 'helps', 90),
      facts: {
        line: line(name),
        count: 1,
        min: degrees(1),
        max: degrees(1),
        low: degrees(0),
        high: degrees(high),
      },
    });
    expect(shown([one('celery', 3), one('broccoli', 2)])).toHaveLength(2);
  });

  it('leave out what a heavier line of the same side says, and never the other side for it', () => {
    const romaine = { line: line('romaine') };
    const both = made('arrival-supports-origin', 'helps', 95, romaine);
    const loading = made('pulps-at-loading-above-band', 'helps', 88, romaine);
    const delivery = made('pulps-at-delivery-above-band', 'hurts', 92, romaine);
    expect(shown([both, loading, delivery]).map((one) => one.id)).toEqual([both.id, delivery.id]);
    const other = made('pulps-at-loading-above-band', 'helps', 88, { line: line('celery') });
    expect(shown([both, other])).toHaveLength(2);
  });
});

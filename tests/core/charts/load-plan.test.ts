import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { loadPlan } from '../../../src/core/assess/loading/plan.js';
import { type LoadPicture, loadPicture } from '../../../src/core/charts/load-plan.js';
import type { RowPattern } from '../../../src/core/model/evidence.js';
import type { LoadPlan } from '../../../src/core/model/results.js';
import { cases } from '../../properties.js';
import { items, state } from '../assess/made.js';

const words = {
  unit: 'Unit',
  doors: 'Doors',
  loading: 'Loading',
  delivery: 'Delivery',
  drain: 'Drain',
  brace: 'Bracing',
  chute: 'Air chute',
  pulp: 'Pulp',
};
const rows = (pattern: RowPattern, from: number, to: number) => ({
  kind: 'pattern' as const,
  pattern,
  rows: { from, to },
  blocks: [],
});
function planOf(...noted: ReturnType<typeof rows>[]): LoadPlan {
  const plan = loadPlan(
    state(items(...noted), {
      equipment: { trailer: { number: 'T-118', insideWidth: '99 in', insideLength: '630 in' } },
    }),
  );
  if (plan === undefined) throw new Error('no rows');
  return plan;
}
const picture = (plan: LoadPlan, more: Partial<LoadPicture> = {}): LoadPicture => ({
  plan,
  length: 630 * 0.0254,
  width: 99 * 0.0254,
  lines: [{ id: 'romaine', letter: 'A', name: 'Romaine' }],
  airChute: false,
  compartments: [],
  braces: [],
  points: [],
  words,
  ...more,
});
const rects = (drawing: string) =>
  [...drawing.matchAll(/<rect x="([\d.]+)" y="([\d.]+)" width="([\d.]+)" height="([\d.]+)"/g)].map((m) =>
    m.slice(1).map(Number),
  );

describe('the floor from above', () => {
  it('draws every pallet to one scale, inside the trailer', () => {
    const plan = planOf(rows('pinwheel', 1, 14));
    const [floor = [0, 0, 0, 0], ...others] = rects(loadPicture(picture(plan)));
    const [x = 0, y = 0, wide = 0, high = 0] = floor;
    expect(wide / high).toBeCloseTo(630 / 99, 1);
    const pallets = others.filter(([left = 0]) => left >= x).slice(0, 28);
    expect(pallets).toHaveLength(28);
    for (const [left = 0, top = 0, w = 0, h = 0] of pallets) {
      expect(left + w).toBeLessThanOrEqual(x + wide);
      expect(top).toBeGreaterThanOrEqual(y);
      expect(top + h).toBeLessThanOrEqual(y + high);
    }
  });

  it('shows bulkheads across the floor, and the names of the compartments', () => {
    const compartments = [
      { name: 'compartment front', middle: 3, bulkhead: 6 },
      { name: 'compartment rear', middle: 11 },
    ];
    const plain = loadPicture(picture(planOf(rows('straight', 1, 4))));
    const drawn = loadPicture(picture(planOf(rows('straight', 1, 4)), { compartments }));
    expect(drawn).toContain('compartment front');
    expect(drawn).toContain('compartment rear');
    // One bulkhead between two compartments, drawn as two lines.
    expect(drawn.split('<line').length - plain.split('<line').length).toBe(2);
  });

  it('shows drains, bracing, chute and pulps by name, so that it is read without colour', () => {
    const drawn = loadPicture(
      picture(planOf(rows('straight', 1, 13)), {
        drains: 'rear',
        airChute: true,
        braces: [{ y: 15 }],
        points: [{ x: 1, y: 2, loading: '36.5', delivery: '38.1' }],
      }),
    );
    for (const word of ['Drain', 'Bracing', 'Air chute', 'Pulp', '36.5', '38.1', 'Unit', 'Doors', 'Romaine'])
      expect(drawn).toContain(`>${word}<`);
  });

  it('keeps the pulp values apart, in the order of their points, on the page', () => {
    fc.assert(
      fc.property(
        fc.uniqueArray(fc.integer({ min: 0, max: 1550 }), { minLength: 1, maxLength: 12 }),
        (centimetres) => {
          const along = centimetres.map((cm) => cm / 100);
          const points = along.map((y, i) => ({ y, x: 1, loading: `v${i}` }));
          const drawn = loadPicture(picture(planOf(rows('straight', 1, 13)), { points }));
          const at = points.map(({ loading }) =>
            Number(new RegExp(`<text x="(-?[\\d.]+)"[^>]*>${loading}<`).exec(drawn)?.[1]),
          );
          const ordered = points
            .map(({ y }, i) => ({ y, x: at[i] ?? Number.NaN }))
            .sort((a, b) => a.y - b.y || a.x - b.x);
          ordered.forEach((one, i) => {
            expect(one.x).toBeLessThanOrEqual(500);
            const next = ordered[i + 1];
            if (next !== undefined) expect(next.x - one.x).toBeGreaterThan(10);
          });
        },
      ),
      { numRuns: cases(40) },
    );
  });
});

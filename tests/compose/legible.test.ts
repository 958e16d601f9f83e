import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { prepareDossier } from '../../src/compose/compose.js';
import { ink } from '../../src/core/charts/svg.js';
import { sampleInput } from './sample.js';

/** Relative luminance and contrast, WCAG 2.2, definitions of "relative luminance" and "contrast ratio". */
function luminance(colour: string): number {
  const [r = 0, g = 0, b = 0] = [1, 3, 5].map((at) => {
    const share = Number.parseInt(colour.slice(at, at + 2), 16) / 255;
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}
function contrast(a: string, b: string): number {
  const [light = 0, dark = 0] = [luminance(a), luminance(b)].sort((x, y) => y - x);
  return (light + 0.05) / (dark + 0.05);
}

const PAGES = join(import.meta.dirname, '../../templates/dossier');
const sources = readdirSync(PAGES).map((name) => readFileSync(join(PAGES, name), 'utf8'));
const theme: Record<string, string> = Object.fromEntries(
  [...readFileSync(join(PAGES, 'theme.typ'), 'utf8').matchAll(/#let (\w+) = rgb\("(#[0-9a-f]{6})"\)/g)].map(
    ([, name = '', colour = '']) => [name, colour],
  ),
);

describe('contrast', () => {
  it('is computed as WCAG does: its two ends and a published middle value', () => {
    expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 5);
    expect(contrast('#777777', '#ffffff')).toBeCloseTo(4.48, 2);
  });

  it('of every colour of words on paper and on tinted ground is at least 4.5 (WCAG 2.2, 1.4.3)', () => {
    for (const colour of [theme.ink, theme.soft, theme.alert])
      for (const ground of ['#ffffff', theme.tint])
        expect([colour, ground, contrast(colour ?? '', ground ?? '') >= 4.5]).toEqual([colour, ground, true]);
    expect(contrast('#ffffff', theme.alert ?? '')).toBeGreaterThanOrEqual(4.5);
  });

  it('of pages and drawings comes from the same colours', () => {
    expect(theme).toMatchObject({ ink: ink.full, soft: ink.soft, tint: ink.tint, alert: ink.alert });
  });
});

describe('words in drawings', () => {
  let drawings: { name: string; svg: string }[];
  beforeAll(async () => {
    const { job } = await prepareDossier(await sampleInput());
    drawings = [...job.assets]
      .filter(([name]) => name.endsWith('.svg'))
      .map(([name, bytes]) => ({ name, svg: Buffer.from(bytes).toString('utf8') }));
  });

  it('stand out from paper and band, and are printed at 7 points or more on the narrower paper', () => {
    const PRINTED_WIDTH = ((210 - 2 * 19) / 25.4) * 72;
    expect(drawings.length).toBeGreaterThan(3);
    for (const { name, svg } of drawings) {
      const width = Number(/^<svg[^>]* width="([\d.]+)"/.exec(svg)?.[1]);
      for (const [, attributes = ''] of svg.matchAll(/<text([^>]*)>/g)) {
        const fill = /fill="(#[0-9a-f]{6})"/.exec(attributes)?.[1] ?? '';
        const size = (Number(/font-size="([\d.]+)"/.exec(attributes)?.[1]) * PRINTED_WIDTH) / width;
        expect([name, size >= 7]).toEqual([name, true]);
        const grounds = fill === ink.paper ? [ink.alert] : [ink.paper, ink.tint];
        for (const ground of grounds)
          expect([name, fill, contrast(fill, ground) >= 4.5]).toEqual([name, fill, true]);
      }
    }
  });
});

describe('words on the pages', () => {
  it('are never set smaller than 7 points', () => {
    const sizes = sources.flatMap((source) =>
      [...source.matchAll(/(?:size: |tiny = |small = )([\d.]+)pt/g)].map(([, size]) => Number(size)),
    );
    expect(sizes.length).toBeGreaterThan(15);
    expect(Math.min(...sizes)).toBeGreaterThanOrEqual(7);
  });
});

import { relative } from 'node:path';
import { expect, it } from 'vitest';
import { files, imports, SRC } from './sources.js';

type Arrow = { from: string; to: string };

/** What is left when files that nothing leads to, or that lead to nothing, are taken away until there are none. */
function circlesIn(arrows: readonly Arrow[]): readonly Arrow[] {
  const leads = new Set(arrows.map(({ from }) => from));
  const isLedTo = new Set(arrows.map(({ to }) => to));
  const left = arrows.filter(({ from, to }) => leads.has(to) && isLedTo.has(from));
  return left.length === arrows.length ? left : circlesIn(left);
}

it('no files import one another in a circle, not for their types either', () => {
  expect(files.length).toBeGreaterThan(400);
  expect(
    circlesIn(imports).map(({ from, to }) => `${relative(SRC, from)} imports ${relative(SRC, to)}`),
  ).toEqual([]);
});

it('a circle is found, with nothing else', () => {
  const arrow = (text: string) => ({ from: text.charAt(0), to: text.charAt(1) });
  const circle = ['bc', 'cd', 'db'].map(arrow);
  expect(circlesIn([arrow('ab'), ...circle, arrow('de'), arrow('ef')])).toEqual(circle);
});

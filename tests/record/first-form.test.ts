import { cpSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, expect, it } from 'vitest';
import type { Assessment } from '../../src/core/model/results.js';
import { celsius } from '../../src/reference.js';
import { type Yard, yard } from '../cli/a-delivery.js';
import { squeezed, textOf } from '../compose/pages.js';

const KEPT = fileURLToPath(new URL('../../fixtures/records/first-form', import.meta.url));
/** Printed by the code that wrote the record, on the day. */
const SENT = 'FIRST-FORM-1 26 7fbf079ba57901a95547eeb61b008b1792702a14c03c590fc3d41296abd53078';
const LAST = 'FIRST-FORM-1 37 0ed70a79f3e742a5b3fb92a6648d780bc5f96251c392f54c9ab8549486fdbc79';

let here: Yard;
beforeAll(() => {
  here = yard();
  cpSync(KEPT, here.at('kept'), { recursive: true });
});
afterAll(() => here.end());

it('holds an entry of each kind that the first form had', () => {
  expect(new Set(here.entries(here.at('kept')).map(({ type }) => type))).toEqual(
    new Set([
      'delivery-facts',
      'evidence-received',
      'reading-recorded',
      'evidence-described',
      'evidence-withheld',
      'clock-compared',
      'fingerprint-published',
      'time-stamp-received',
      'dossier-built',
      'claim-noted',
    ]),
  );
});

it.each([
  ['the fingerprint that was sent', SENT],
  ['the fingerprint that it had last', LAST],
])('verifies by %s', async (_, line) => {
  const ran = await here.dossier('verify', 'kept', '--fingerprint', line);
  expect([ran.code, ran.out]).toEqual([0, expect.stringContaining('INTACT')]);
});

/** 36 °F in the log but for 40 °F at 09:15, 09:30 and 09:45, rows 15 minutes apart; 36 ± 2 °F instructed. */
it('gives the figures written by hand', async () => {
  const temps: Pick<Assessment, 'temperatures' | 'pulps'> = JSON.parse(
    (await here.dossier('temps', 'kept', '--json')).out,
  );
  const [log] = temps.temperatures;
  const air = log?.channels.find(({ channel }) => channel === 'return-air');
  const hours = 3600;
  expect(log?.custody).toMatchObject({
    from: { at: Date.parse('2026-07-14T06:30-07:00'), basis: 'doors-closed' },
    to: { at: Date.parse('2026-07-14T12:30-07:00'), basis: 'doors-opened' },
  });
  // Half of each quarter hour of rise and fall, and the half hour at 40 °F between them.
  expect(air?.aboveSeconds).toBeCloseTo(0.75 * hours, 3);
  expect(air?.inBandSeconds).toBeCloseTo(5.25 * hours, 3);
  // Two triangles of 7.5 min and 2 °F, and 30 min at 2 °F: 1.25 °F·h.
  expect(air?.degreeHoursAbove).toBeCloseTo((1.25 * 5) / 9, 6);
  expect(air?.max?.value).toBeCloseTo(celsius({ value: 40, unit: '°F' }), 9);
  const means = temps.pulps.map(({ line, stop, mean }) => [line, stop, mean.toFixed(3)]);
  expect(means).toEqual([
    ['romaine', 'load-1', celsius({ value: 37.2, unit: '°F' }).toFixed(3)],
    ['romaine', 'drop-1', celsius({ value: 38.1, unit: '°F' }).toFixed(3)],
  ]);
});

it('computes the claim: 200 cartons at 12.00, the corrected quantity alone', async () => {
  const { claims } = JSON.parse((await here.dossier('answer', 'kept', '--json')).out);
  expect(claims[0]).toMatchObject({
    amounts: { claimed: 240_000, computed: { low: 240_000, high: 240_000 } },
    quantities: [
      {
        line: 'romaine',
        states: [
          { state: 'shipped', low: '480', high: '480' },
          { state: 'rejected', low: '200', high: '200' },
        ],
      },
    ],
  });
});

it('builds a whole dossier, takes a correction in, and proves the fingerprint that was sent', async () => {
  const corrected = await here.dossier('correct', 'e19', '37.1F', '--why', 'read again', '-d', 'kept');
  expect([corrected.code, corrected.err]).toEqual([0, '']);
  const built = await here.dossier('build', '-d', 'kept', '-o', 'first-form.pdf');
  expect(built.code).toBe(0);
  const verified = await here.dossier('verify', 'first-form.pdf', 'kept', '--fingerprint', SENT);
  expect([verified.code, verified.out]).toEqual([
    0,
    expect.not.stringContaining('not checked  The record begins'),
  ]);
  const text = squeezed(await textOf(readFileSync(here.at('first-form.pdf'))));
  expect(text).toContain(squeezed('37.1 °F'));
  expect(text).toContain(squeezed('read again'));
});

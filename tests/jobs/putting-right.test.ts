import { cpSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import fc from 'fast-check';
import { afterAll, beforeAll, expect, it } from 'vitest';
import type { Assessment } from '../../src/core/model/results.js';
import { toInstant } from '../../src/core/model/time.js';
import { assessDelivery } from '../../src/jobs/assess.js';
import { recordClaim } from '../../src/jobs/claim.js';
import { collect } from '../../src/jobs/collect.js';
import { correct } from '../../src/jobs/correct.js';
import { describe as describeEvidence } from '../../src/jobs/describe.js';
import { fingerprint } from '../../src/jobs/fingerprint.js';
import { merge } from '../../src/jobs/merge.js';
import { newDelivery } from '../../src/jobs/new-delivery.js';
import { recordReading } from '../../src/jobs/record-reading.js';
import { strike } from '../../src/jobs/strike.js';
import { verify } from '../../src/jobs/verify.js';
import { FACTS } from '../cli/a-delivery.js';
import { cases } from '../properties.js';

const NOW = new Date('2026-07-20T12:00:00Z');
const now = () => NOW;
const by = 'Test';

/** 36 °F with an hour at 41 °F; the log of another trailer is 10 °F warmer. */
const log = (more: number) =>
  [
    'Clock zone,America/Phoenix',
    'Date time,Set point (°F),Return air (°F)',
    ...Array.from({ length: 40 }, (_, i) => {
      const at = toInstant(Date.UTC(2026, 6, 14, 6) + i * 900_000).slice(0, 16);
      return `${at.replace('T', ' ')},36.0,${(i >= 10 && i < 14 ? 41 : 36) + more}`;
    }),
    '',
  ].join('\n');

let folder: string;
let count = 0;
beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'putting-right-'));
  writeFileSync(join(folder, 'facts.yaml'), FACTS);
  writeFileSync(join(folder, 'log.csv'), log(0));
  writeFileSync(join(folder, 'other-log.csv'), log(10));
  await newDelivery({ folder: join(folder, 'bare'), by, now, file: join(folder, 'facts.yaml') });
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

function fresh(from = 'bare'): string {
  count += 1;
  cpSync(join(folder, from), join(folder, String(count)), { recursive: true });
  return join(folder, String(count));
}

/** Something entered, as it should have been. */
type Entered =
  | { is: 'pulp'; degrees: number; stop: 'load-1' | 'drop-1'; minute: number }
  | { is: 'event'; event: string; stop: 'load-1' | 'drop-1'; minute: number }
  | { is: 'seal'; number: number; minute: number }
  | { is: 'log'; file: 'log.csv' | 'other-log.csv' }
  | { is: 'claim'; dollars: number };

/** Enters one thing, and gives the name by which it is put right. */
async function enter(delivery: string, one: Entered): Promise<string> {
  const reading = async (kind: 'pulp' | 'event' | 'seal', word: string, fields: Record<string, unknown>) => {
    const result = await recordReading({
      folder: delivery,
      kind,
      word,
      fields,
      enteredBy: by,
      now,
      sure: true,
    });
    if (result.is !== 'recorded') throw new Error('it was sure');
    return result.evidence;
  };
  switch (one.is) {
    case 'pulp':
      return reading('pulp', `${one.degrees}F`, { line: 'romaine', stop: one.stop, at: timeOf(one) });
    case 'event':
      return reading('event', one.event, { stop: one.stop, at: timeOf(one) });
    case 'seal':
      return reading('seal', String(one.number), {
        state: 'applied',
        stop: 'load-1',
        at: timeOf({ ...one, stop: 'load-1' }),
      });
    case 'log': {
      const { items } = await collect({ folder: delivery, by, now, paths: [join(folder, one.file)] });
      return items[0]?.evidence ?? '';
    }
    case 'claim': {
      const fields = { as: 'receiver', on: '2026-07-18', amount: `${one.dollars} USD` };
      const noted = await recordClaim({
        folder: delivery,
        by,
        now,
        is: 'received',
        word: `Claimant ${one.dollars}`,
        fields,
      });
      return `#${noted.entry}`;
    }
  }
}
const timeOf = ({ stop, minute }: { stop: string; minute: number }) =>
  `2026-07-${stop === 'load-1' ? '14T06' : '14T17'}:${String(minute).padStart(2, '0')}`;

const minute = fc.integer({ min: 0, max: 59 });
const stop = fc.constantFrom('load-1' as const, 'drop-1' as const);
const entered: fc.Arbitrary<Entered> = fc.oneof(
  {
    weight: 4,
    arbitrary: fc.record({
      is: fc.constant('pulp' as const),
      degrees: fc.integer({ min: 30, max: 60 }),
      stop,
      minute,
    }),
  },
  {
    weight: 2,
    arbitrary: fc.record({
      is: fc.constant('event' as const),
      event: fc.constantFrom('arrived', 'doors-closed', 'doors-opened', 'refused'),
      stop,
      minute,
    }),
  },
  {
    weight: 1,
    arbitrary: fc.record({
      is: fc.constant('seal' as const),
      number: fc.integer({ min: 1, max: 9 }),
      minute,
    }),
  },
  {
    weight: 2,
    arbitrary: fc.record({
      is: fc.constant('log' as const),
      file: fc.constantFrom('log.csv' as const, 'other-log.csv' as const),
    }),
  },
  {
    weight: 1,
    arbitrary: fc.record({ is: fc.constant('claim' as const), dollars: fc.integer({ min: 1, max: 900 }) }),
  },
);
const step = fc.oneof(
  { weight: 4, arbitrary: fc.record({ do: fc.constant('enter' as const), what: entered }) },
  {
    weight: 2,
    arbitrary: fc.record({
      do: fc.constant('correct' as const),
      of: fc.nat(20),
      value: fc.integer({ min: 30, max: 60 }),
    }),
  },
  {
    weight: 2,
    arbitrary: fc.record({ do: fc.constant('strike' as const), of: fc.nat(20), restore: fc.boolean() }),
  },
  { weight: 1, arbitrary: fc.record({ do: fc.constant('withhold' as const), of: fc.nat(20) }) },
);
type Step = typeof step extends fc.Arbitrary<infer S> ? S : never;

/** What a record should hold after all steps, in the order of entering; withheld evidence is held. */
interface Standing {
  what: Entered;
  name: string;
  withheld: boolean;
}

/** Does the steps on a delivery, and gives what stands and the fingerprint after each step. */
async function live(
  delivery: string,
  steps: readonly Step[],
): Promise<{ standing: Standing[]; fingerprints: string[] }> {
  const standing: Standing[] = [];
  const fingerprints: string[] = [];
  const why = 'a mistake';
  for (const one of steps) {
    if (one.do === 'enter') {
      // The same file again adds nothing, and neither does the same claim.
      const name = await enter(delivery, one.what);
      if (!standing.some((before) => before.name === name) && !(await isStruck(delivery, name)))
        standing.push({ what: one.what, name, withheld: false });
    }
    const target = one.do === 'enter' ? undefined : standing[one.of % Math.max(1, standing.length)];
    if (one.do === 'correct' && target?.what.is === 'pulp') {
      await correct({
        folder: delivery,
        target: target.name,
        word: `${one.value}F`,
        fields: {},
        why,
        enteredBy: by,
        now,
        sure: true,
      });
      target.what = { ...target.what, degrees: one.value };
    }
    if (one.do === 'strike' && target !== undefined) {
      const { struck } = await strike({ folder: delivery, targets: [target.name], why, enteredBy: by, now });
      if (one.restore)
        await strike({ folder: delivery, targets: [`#${struck.at(-1)?.strike}`], why, enteredBy: by, now });
      else standing.splice(standing.indexOf(target), 1);
    }
    if (one.do === 'withhold' && target !== undefined && target.what.is !== 'claim') {
      await describeEvidence({ folder: delivery, by, now, evidence: [target.name], act: 'withhold', why });
      target.withheld = true;
    }
    fingerprints.push((await fingerprint({ folder: delivery, by, now })).line);
  }
  return { standing, fingerprints };
}

async function isStruck(delivery: string, name: string): Promise<boolean> {
  const { state } = await assessDelivery({ folder: delivery, by, now, at: toInstant(NOW.getTime()) });
  return state.strikes.some(({ entry }) => 'evidence' in entry.body && entry.body.evidence === name);
}

/** A record in which what stands was entered right at once. */
async function withoutMistakes(standing: readonly Standing[]): Promise<string> {
  const delivery = fresh();
  for (const { what, withheld } of standing) {
    const name = await enter(delivery, what);
    if (withheld)
      await describeEvidence({
        folder: delivery,
        by,
        now,
        evidence: [name],
        act: 'withhold',
        why: 'a mistake',
      });
  }
  return delivery;
}

/** Every figure, finding, gap and claim of a delivery; evidence by its place among what counts, without numbers of entries. */
async function figures(delivery: string): Promise<unknown> {
  const { assessment, state } = await assessDelivery({
    folder: delivery,
    by,
    now,
    at: toInstant(NOW.getTime()),
  });
  const place = new Map<string, string>(state.evidence.map(({ evidence }, i) => [evidence, `E${i + 1}`]));
  const claims = new Map<string, string>(
    [...new Set(state.claims.map(({ claim }) => claim))].flatMap((id, i) =>
      id === undefined ? [] : [[id, `C${i + 1}`]],
    ),
  );
  const text = JSON.stringify(assessment, (name, value) => (ENTRY_NUMBERS.has(name) ? undefined : value));
  return JSON.parse(
    text
      .replaceAll(/\be\d+\b/g, (id) => place.get(id) ?? id)
      .replaceAll(/\bc\d+\b/g, (id) => claims.get(id) ?? id),
  ) satisfies Assessment;
}
const ENTRY_NUMBERS = new Set(['seq', 'seqs', 'entry', 'entries']);

/** What a stranger who has the fingerprints finds wrong with a record. */
async function failed(delivery: string, fingerprints: readonly string[]): Promise<string[]> {
  const { subjects } = await verify({ paths: [delivery], trust: [], fingerprints, now });
  return subjects.flatMap(({ checks }) =>
    checks.flatMap(({ id, result, detail }) =>
      result === 'failed' ||
      (id === 'fingerprint.matches' && fingerprints.length > 0 && result === 'not-checked')
        ? [`${id}: ${detail}`]
        : [],
    ),
  );
}

it('all figures are those of a record in which the mistake was never made; it stays whole, and each earlier fingerprint provable', async () => {
  await fc.assert(
    fc.asyncProperty(fc.array(step, { minLength: 4, maxLength: 14 }), async (steps) => {
      const delivery = fresh();
      const { standing, fingerprints } = await live(delivery, steps);
      expect(await figures(delivery)).toEqual(await figures(await withoutMistakes(standing)));
      expect(await failed(delivery, fingerprints)).toEqual([]);
    }),
    { numRuns: cases(10) },
  );
}, 120_000);

it('two copies that went apart merge whole, with each fingerprint of both provable, and a second time nothing', async () => {
  const some = fc.array(step, { maxLength: 6 });
  await fc.assert(
    fc.asyncProperty(some, some, some, async (both, ones, twos) => {
      const one = fresh();
      const before = await live(one, both);
      const two = fresh(one.slice(folder.length + 1));
      const [lived, other] = [await live(one, ones), await live(two, twos)];
      await merge({ folder: one, other: two, by, now });
      const fingerprints = [before, lived, other].flatMap((life) => life.fingerprints);
      expect(await failed(one, fingerprints)).toEqual([]);
      const again = await merge({ folder: one, other: two, by, now });
      expect([again.merge, again.taken]).toEqual([undefined, []]);
    }),
    { numRuns: cases(10) },
  );
}, 120_000);

import { readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { gzipSync } from 'node:zlib';
import { afterAll, beforeAll, expect } from 'vitest';
import { z } from 'zod';
import { loadTemplates } from '../../../src/compose/load-words.js';
import { splitRows } from '../../../src/core/ledger/ledger.js';
import { omitUndefined } from '../../../src/core/model/omit-undefined.js';
import { readUnitLog } from '../../../src/intake/unit-log/read.js';
import { collect } from '../../../src/jobs/collect.js';
import { withDelivery } from '../../../src/jobs/delivery.js';
import { newDelivery } from '../../../src/jobs/new-delivery.js';
import { loadRuleSet } from '../../../src/jobs/rule-set.js';
import { checkWith, chromium, scratch } from '../programs.js';
import { type CoreInput, coreResults, written } from './core-results.js';
import { bundled, differenceOf, inBrowser } from './in-browser.js';

const ROOT = resolve(import.meta.dirname, '../../..');
const DEMO = join(ROOT, 'fixtures/demo');
const disk = scratch();
afterAll(disk.end);

/**
 * Compressed, with all that it computes, says and draws, but no templates: what a page for a phone may be. A page for
 * the dock needs no claims, which are a good part of it.
 */
const MOST_BYTES = 350_000;

let input: string;
let script: string;

beforeAll(async () => {
  input = written(await demonstration());
  script = bundled('page.ts', disk.folder);
}, 300_000);

/** The demonstration's record, its logs as they were read, and the shipped files. */
async function demonstration(): Promise<CoreInput> {
  const who = {
    folder: join(disk.folder, 'delivery'),
    by: 'Check',
    now: () => new Date('2026-07-17T09:05:00Z'),
  };
  await newDelivery({ ...who, file: join(DEMO, 'delivery.yaml') });
  await collect({
    ...who,
    paths: [join(DEMO, 'evidence')],
    logZone: undefined,
    logUnit: undefined,
    progress: () => undefined,
  });
  return withDelivery(who, false, async (record) => {
    const { rows } = splitRows(readFileSync(join(who.folder, 'ledger.jsonl')));
    const state = record.state();
    const logs = await Promise.all(
      state.evidence
        .flatMap((item) => (item.kind === 'unit-log' ? [item] : []))
        .map(async ({ evidence, file, mapping }) =>
          readUnitLog((await record.originalPath(file.sha256)) ?? '', mapping, { evidence, addedSeconds: 0 }),
        ),
    );
    const { text, sha256, origin } = await loadRuleSet(state.delivery.rules, record.folder);
    return {
      rows: rows.map((row) => z.unknown().parse(JSON.parse(Buffer.from(row).toString()))),
      root: state.root,
      logs,
      rules: { text, sha256, origin },
      clocks: readFileSync(join(ROOT, 'templates/claim-deadlines.yaml'), 'utf8'),
      words: { en: words('en'), es: words('es') },
      at: '2026-08-01T00:00:00.000Z',
    };
  });
}

function words(language: string): CoreInput['words']['en'] {
  const { templates, labels, remarks } = loadTemplates(join(ROOT, 'templates/words', language));
  return {
    templates: Object.fromEntries(templates),
    labels: labels.text,
    ...omitUndefined({ remarks: remarks?.text }),
  };
}

const PLACES: [where: 'page' | 'worker', locale: string, timezoneId: string][] = [
  ['page', 'en-US', 'UTC'],
  ['page', 'de-DE', 'Asia/Tokyo'],
  ['worker', 'en-US', 'America/Chicago'],
];

for (const [where, locale, timezoneId] of PLACES)
  checkWith(
    chromium,
    `every result, sentence and drawing of the demonstration is Node’s in a ${where} (${locale}, ${timezoneId})`,
    async () => {
      const { results, refused } = await inBrowser(script, input, where, { locale, timezoneId });
      expect(results.length).toBeGreaterThan(500_000);
      expect(differenceOf(results, coreResults(input))).toBeUndefined();
      expect(refused).toEqual([]);
    },
  );

checkWith(chromium, 'the core is small enough for a page', () => {
  const bytes = gzipSync(script, { level: 9 }).length;
  console.log(`the core as a page gets it: ${script.length} bytes, ${bytes} compressed`);
  expect(bytes).toBeLessThan(MOST_BYTES);
  // Messages of schemas in other languages than English, which nobody is shown, are as large as the schemas.
  expect(script).not.toContain('Ungültig');
});

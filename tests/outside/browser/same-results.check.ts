import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { createServer } from 'node:http';
import { join, resolve } from 'node:path';
import { gzipSync } from 'node:zlib';
import { type BrowserContextOptions, chromium as playwright } from 'playwright';
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
import { BROWSER_ARGUMENTS } from './arguments.js';
import { type CoreInput, coreResults, written } from './core-results.js';

const ROOT = resolve(import.meta.dirname, '../../..');
const DEMO = join(ROOT, 'fixtures/demo');
const disk = scratch();
afterAll(disk.end);

/** The page may run its own script and nothing else: no code made of text, nothing from elsewhere. */
const POLICY = "default-src 'none'; script-src 'self'; worker-src 'self'";
/** Notes what the policy keeps the page from: a page that catches the refusal goes on as if nothing were. */
const WATCH = `
  globalThis.refused = [];
  addEventListener('securitypolicyviolation', (event) => refused.push(event.violatedDirective + ' ' + event.blockedURI));
`;
const PAGE =
  '<!doctype html><meta charset="utf-8"><title>core</title><script type="module" src="core.js"></script>';
/** Compressed, with all that it computes, says and draws, but no templates: three quarters of what a page for a phone may be. */
const MOST_BYTES = 260_000;

let input: string;
let script: string;

beforeAll(async () => {
  input = written(await demonstration());
  script = bundled();
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
      state.evidence.flatMap((item) =>
        item.kind === 'unit-log'
          ? [
              readUnitLog(record.originalPath(item.file.sha256) ?? '', item.mapping, {
                evidence: item.evidence,
                addedSeconds: 0,
              }),
            ]
          : [],
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

/** The core as a page gets it: one script. */
function bundled(): string {
  const out = join(disk.folder, 'core.js');
  const done = spawnSync(
    process.execPath,
    [join(import.meta.dirname, 'bundle.js'), join(import.meta.dirname, 'page.ts'), out],
    { encoding: 'utf8' },
  );
  if (done.status !== 0) throw new Error(done.stderr);
  return readFileSync(out, 'utf8');
}

/** A script that has a worker of the page compute. */
const inWorker = (text: string): string => `new Promise((done, fail) => {
  const worker = new Worker('core.js', { type: 'module' });
  worker.onmessage = ({ data }) => done(data);
  worker.onerror = (event) => fail(new Error(event.message));
  worker.postMessage(${text});
})`;

/** What a page or its worker computes in a browser of that language and zone, and what the policy kept it from. */
async function inBrowser(
  context: BrowserContextOptions,
  where: 'page' | 'worker',
): Promise<{ results: string; refused: string[] }> {
  const server = createServer((request, answer) => {
    const isScript = request.url === '/core.js';
    answer.setHeader('Content-Type', `${isScript ? 'text/javascript' : 'text/html'}; charset=utf-8`);
    answer.setHeader('Content-Security-Policy', POLICY);
    answer.end(isScript ? script : PAGE);
  });
  await new Promise<void>((done) => server.listen(0, '127.0.0.1', done));
  const address = z.object({ port: z.number() }).parse(server.address());
  const browser = await playwright.launch({
    executablePath: chromium.command?.[0] ?? '',
    args: BROWSER_ARGUMENTS,
  });
  try {
    const page = await (await browser.newContext(context)).newPage();
    await page.addInitScript(WATCH);
    await page.goto(`http://127.0.0.1:${address.port}/`);
    await page.waitForFunction('self.coreResultsOf !== undefined');
    const handed = JSON.stringify(input);
    const results = z
      .string()
      .parse(await page.evaluate(where === 'page' ? `coreResultsOf(${handed})` : inWorker(handed)));
    const refused = z.array(z.string()).parse(await page.evaluate('refused'));
    return { results, refused };
  } finally {
    await browser.close();
    server.close();
  }
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
      const { results, refused } = await inBrowser({ locale, timezoneId }, where);
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

/** Where two long texts part, so that a failure shows the place and not all of both. */
function differenceOf(one: string, other: string): [string, string] | undefined {
  if (one === other) return undefined;
  let at = 0;
  while (one[at] === other[at]) at += 1;
  return [one.slice(at - 80, at + 80), other.slice(at - 80, at + 80)];
}

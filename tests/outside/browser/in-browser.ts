import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { createServer } from 'node:http';
import { join, resolve } from 'node:path';
import { type BrowserContextOptions, chromium as playwright } from 'playwright';
import { z } from 'zod';
import { chromium } from '../programs.js';
import { BROWSER_ARGUMENTS } from './arguments.js';

/** The page may run its own script and nothing else: no code made of text, nothing from elsewhere. */
const POLICY = "default-src 'none'; script-src 'self'; worker-src 'self'";
/** Notes what the policy keeps the page from: a page that catches the refusal goes on as if nothing were. */
const WATCH = `
  globalThis.refused = [];
  addEventListener('securitypolicyviolation', (event) => refused.push(event.violatedDirective + ' ' + event.blockedURI));
`;
const PAGE =
  '<!doctype html><meta charset="utf-8"><title>core</title><script type="module" src="script.js"></script>';

/** A script for a page, as a page gets it: one file. The entry lies in this folder, or where its whole path says. */
export function bundled(entry: string, folder: string): string {
  const out = join(folder, 'script.js');
  const done = spawnSync(
    process.execPath,
    [join(import.meta.dirname, 'bundle.js'), resolve(import.meta.dirname, entry), out],
    { encoding: 'utf8' },
  );
  if (done.status !== 0) throw new Error(done.stderr);
  return readFileSync(out, 'utf8');
}

/** A script that has a worker of the page compute. */
const inWorker = (text: string): string => `new Promise((done, fail) => {
  const worker = new Worker('script.js', { type: 'module' });
  worker.onmessage = ({ data }) => done(data);
  worker.onerror = (event) => fail(new Error(event.message));
  worker.postMessage(${text});
})`;

/** What a page or its worker makes of a text in a browser of that language and zone, and what the policy kept it from. */
export async function inBrowser(
  script: string,
  input: string,
  where: 'page' | 'worker',
  context: BrowserContextOptions,
): Promise<{ results: string; refused: string[] }> {
  const server = createServer((request, answer) => {
    const isScript = request.url === '/script.js';
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
    await page.waitForFunction(() => 'resultsOf' in globalThis);
    const handed = JSON.stringify(input);
    const results = z
      .string()
      .parse(await page.evaluate(where === 'page' ? `resultsOf(${handed})` : inWorker(handed)));
    const refused = z.array(z.string()).parse(await page.evaluate('refused'));
    return { results, refused };
  } finally {
    await browser.close();
    server.close();
  }
}

/** Where two long texts part, so that a failure shows the place and not all of both. */
export function differenceOf(one: string, other: string): [string, string] | undefined {
  if (one === other) return undefined;
  let at = 0;
  while (one[at] === other[at]) at += 1;
  return [one.slice(at - 80, at + 80), other.slice(at - 80, at + 80)];
}

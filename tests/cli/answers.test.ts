import { spawn } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Output } from '../../src/cli/output.js';
import { runCli } from '../../src/cli/program.js';
import { FACTS, type Yard, yard } from './a-delivery.js';
import { dossierHere, MAIN } from './run.js';

const LOG = `Clock zone,America/Phoenix
Date time,Set point (°F),Return air (°F)
2026-07-14 06:00,36.0,37.0
2026-07-14 06:15,36.0,39.0
2026-07-14 06:30,36.0,37.0
2026-07-14 06:45,36.0,36.0
`;

let here: Yard;
let delivery: string;
let dossierFile: string;
beforeAll(async () => {
  here = yard();
  delivery = await here.delivery();
  await here.delivery('other', FACTS.replace('2026-0714-A', '2026-0715-B'));
  await here.dossier('collect', here.put('log.csv', LOG), '-d', 'delivery');
  await here.dossier(
    'record',
    'pulp',
    '34F',
    '--line',
    'romaine',
    '--stop',
    'load-1',
    '--at',
    '2026-07-14T05:50',
    '-d',
    'delivery',
  );
  await here.aboard('delivery', '2026-07-14T06:00', '2026-07-14T08:45');
  const built = await here.dossier('build', '-d', 'delivery', '--json');
  dossierFile = JSON.parse(built.out).file;
});
afterAll(() => here.end());

const keys = (value: object) => Object.keys(value).sort();
async function json(...args: string[]) {
  const { code, out, err } = await here.dossier(...args, '--json');
  return { code, err, answer: JSON.parse(out) };
}

describe('--json parses and has its keys', () => {
  it('gaps', async () => {
    const { code, answer } = await json('gaps', 'delivery');
    expect(code).toBe(1);
    expect(keys(answer)).toEqual(expect.arrayContaining(['at', 'delivery', 'gaps', 'ruleSet']));
    expect(answer.delivery).toBe('2026-0714-A');
    expect(answer.gaps.length).toBeGreaterThan(20);
    for (const gap of answer.gaps)
      expect(keys(gap)).toEqual(
        expect.arrayContaining([
          'against',
          'basis',
          'closable',
          'counted',
          'how',
          'lacking',
          'nearly',
          'outcome',
          'proves',
          'rule',
          'stage',
          'substitutes',
          'title',
          'why',
        ]),
      );
  });

  it('gaps of several deliveries: a list in the order asked for', async () => {
    const { answer } = await json('gaps', 'other', 'delivery');
    expect(answer.map((one: { delivery: string }) => one.delivery)).toEqual(['2026-0715-B', '2026-0714-A']);
  });

  it('gaps --stage and --at', async () => {
    const { answer } = await json('gaps', 'delivery', '--stage', 'loading', '--at', '2026-07-14T12:00Z');
    expect(answer.at).toBe('2026-07-14T12:00:00.000Z');
    expect(new Set(answer.gaps.map((gap: { stage: string }) => gap.stage))).toEqual(new Set(['loading']));
  });

  it('temps', async () => {
    const { code, answer } = await json('temps', 'delivery');
    expect(code).toBe(0);
    expect(keys(answer)).toEqual(expect.arrayContaining(['delivery', 'pulps', 'temperatures']));
    expect(answer.temperatures[0]).toMatchObject({
      judged: 'return-air',
      custody: { from: { basis: expect.any(String) }, to: { basis: expect.any(String) } },
      band: { toleranceFrom: 'bill' },
      excursions: [{ side: 'above', channel: 'return-air', cause: { is: expect.any(String) } }],
    });
    expect(answer.pulps[0]).toMatchObject({ line: 'romaine', stop: 'load-1', count: 1 });
  });

  it('verify', async () => {
    const { code, answer } = await json('verify', dossierFile);
    expect(code).toBe(0);
    expect(keys(answer)).toEqual(['schema', 'subjects', 'together', 'verdict']);
    expect(answer.verdict).toBe('intact-signer-not-vouched-for');
    const [subject] = answer.subjects;
    expect(keys(subject)).toEqual(['checks', 'fingerprint', 'is', 'path', 'signer', 'verdict', 'volume']);
    for (const check of subject.checks)
      expect(keys(check)).toEqual(expect.arrayContaining(['detail', 'id', 'result', 'what']));
  });

  it('verify of two files: each, and the worse of the two verdicts', async () => {
    const broken = here.put('broken.pdf', 'no PDF');
    const { code, answer } = await json('verify', dossierFile, broken);
    expect(code).toBe(1);
    expect(answer.verdict).toBe('broken');
    expect(answer.subjects.map((one: { verdict: string }) => one.verdict)).toEqual([
      'intact-signer-not-vouched-for',
      'broken',
    ]);
  });

  it('collect', async () => {
    const { code, answer } = await json('collect', 'log.csv', '-d', 'delivery');
    expect(code).toBe(0);
    expect(keys(answer)).toEqual(expect.arrayContaining(['counts', 'items', 'notices', 'problems']));
    expect(answer.items[0]).toMatchObject({ file: 'log.csv', outcome: 'already-held', evidence: 'e1' });
  });

  it('build', async () => {
    const { code, answer } = await json('build', '-d', 'delivery', '-o', here.at('out.pdf'));
    expect(code).toBe(0);
    expect(keys(answer)).toEqual(
      expect.arrayContaining(['bytes', 'file', 'fingerprint', 'notices', 'pages', 'sha256', 'signer']),
    );
    expect(readFileSync(here.at('out.pdf')).subarray(0, 5).toString()).toBe('%PDF-');
  });

  it('new', async () => {
    const { code, answer } = await json('new', 'third', '--file', here.put('third.yaml', FACTS));
    expect(code).toBe(0);
    expect(keys(answer)).toEqual(expect.arrayContaining(['delivery', 'folder', 'rules']));
  });

  it('temps --csv is a table that a spreadsheet reads', async () => {
    const { out } = await here.dossier('temps', 'delivery', '--csv');
    const [head = '', ...rows] = out.trimEnd().split(/\r?\n/);
    expect(head).toMatch(/^log,excursion,channel,side,from_utc,to_utc,/);
    expect(rows).toHaveLength(1);
  });
});

describe('for people', () => {
  it('gaps of several deliveries are one table', async () => {
    const { code, out } = await here.dossier('gaps', 'delivery', 'other');
    expect(code).toBe(1);
    const [head = '', ...rows] = out.trimEnd().split('\n');
    expect(head).toMatch(/^delivery +open +lost +met\b/);
    expect(rows.map((row) => row.split(/ {2,}/)[0])).toEqual(['2026-0714-A', '2026-0715-B']);
    for (const row of rows) expect(row).toMatch(/( {2,}\d+){3}/);
  });

  it('the delivery is found from a folder inside it', async () => {
    const { code, out } = await dossierHere(['temps'], {}, join(delivery, 'originals'));
    expect(code).toBe(0);
    expect(out).toMatch(/^Log e1\n/);
  });

  it('a reader that stops listening does not make the command fail', async () => {
    const child = spawn(process.execPath, [MAIN, 'verify', dossierFile], {
      stdio: ['ignore', 'pipe', 'pipe'],
    });
    let err = '';
    child.stderr.on('data', (text: Buffer) => {
      err += text.toString();
    });
    child.stdout.destroy();
    const code = await new Promise((done) => child.on('close', done));
    expect(err).not.toMatch(/EPIPE|at /);
    expect(code).toBe(0);
  });
});

describe('exit codes', () => {
  it.each([
    ['0: done', ['temps', 'delivery'], 0],
    ['1: gaps', ['gaps', 'delivery'], 1],
    ['1: no unit log', ['temps', 'other'], 1],
    ['1: not a dossier', ['verify', 'log.csv'], 1],
    [
      '1: an intact dossier of a signer not vouched for, where that is required',
      ['verify', 'DOSSIER', '--require-trust'],
      1,
    ],
    ['2: no such file', ['verify', 'nothing.pdf'], 2],
    ['2: no such delivery', ['gaps', 'nowhere'], 2],
    ['2: no such stage', ['gaps', 'delivery', '--stage', 'lading'], 2],
    ['2: a moment without its offset', ['gaps', 'delivery', '--at', '2026-07-14T12:00'], 2],
    ['2: a certificate that is none', ['verify', 'DOSSIER', '--trust', 'log.csv'], 2],
    ['2: no such paper', ['build', '-d', 'delivery', '--paper', 'A5'], 2],
    ['2: no such zone', ['collect', 'log.csv', '-d', 'delivery', '--log-zone', 'Mars/Base'], 2],
    [
      '2: a passphrase file that is not there',
      ['build', '-d', 'delivery', '--passphrase-file', 'nothing'],
      2,
    ],
  ])('%s', async (_, args, expected) => {
    const words = args.map((word) => (word === 'DOSSIER' ? dossierFile : word));
    const { code, err } = await here.dossier(...words);
    expect(err).not.toContain('This is a bug');
    expect(code).toBe(expected);
    if (expected === 2) expect(err).not.toBe('');
  });

  it.each([
    [['--version'], 0],
    [['gaps', 'delivery'], 1],
    [['verify', 'nothing.pdf'], 2],
  ])('of the process that runs %j: %i', async (args, expected) => {
    expect((await here.process(...args)).code).toBe(expected);
  });

  it('2: a wrong passphrase, which is not repeated', async () => {
    const file = here.put('secret', 'not-the-passphrase\n');
    const { code, err } = await here.dossier('build', '-d', 'delivery', '--passphrase-file', file);
    expect(code).toBe(2);
    expect(err).toMatch(/passphrase/);
    expect(err).not.toContain('not-the-passphrase');
  });

  it('70: a bug, with its stack and the version, and no exception out of runCli', async () => {
    const said: string[] = [];
    const broken: Output = {
      line: () => {
        throw new RangeError('the printer is on fire\u001b[31m');
      },
      note: (text) => said.push(text),
      progress: () => undefined,
      json: () => undefined,
      jsonList: () => ({ item: () => undefined, end: () => undefined }),
      document: () => undefined,
      style: (_, text) => text,
      width: 80,
    };
    expect(await runCli(['--help'], broken)).toBe(70);
    expect(said[0]).toMatch(/^This is a bug in load-dossier \d+\.\d+\.\d+; please report it/);
    expect(said[1]).toMatch(/RangeError: the printer is on fire\\u\{1b\}\[31m\n\s+at /);
  });
});

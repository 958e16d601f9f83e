import { spawnSync } from 'node:child_process';
import { copyFileSync, cpSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { build, collect, fingerprint, newDelivery, verify } from '../../src/index.js';
import { httpTimeStamps } from '../../src/signing/time-stamp.js';
import { opensslTsa } from './openssl-tsa.js';
import { ask, bagit, checkWith, openssl, pdfdetach, pdfsig, pyhanko, scratch } from './programs.js';

/** Every command of docs/verify-by-hand.md, run on a dossier with time stamps and a bag. */
const DOCS = join(import.meta.dirname, '../../docs');
const FIXTURES = join(import.meta.dirname, '../../fixtures/demo');
const PAGE = readFileSync(join(DOCS, 'verify-by-hand.md'), 'utf8');
const disk = scratch();
const hand = join(disk.folder, 'dossier.pdf');
const now = () => new Date();
let end: () => void = () => undefined;
afterAll(() => {
  end();
  disk.end();
});

const here = [openssl, pdfsig, pdfdetach].every(({ command }) => command !== undefined);
const run = here ? test : test.skip;

beforeAll(async () => {
  if (!here) return;
  const folder = join(disk.folder, 'delivery');
  const identityFolder = join(disk.folder, 'identity');
  const who = { folder, by: 'Outside check', now };
  await newDelivery({ ...who, file: join(FIXTURES, 'delivery.yaml') });
  writeFileSync(join(disk.folder, 'note.txt'), 'Bill of lading 88-1204: 12 pallets, load at 36 F');
  await collect({
    ...who,
    paths: [join(disk.folder, 'note.txt')],
    logZone: undefined,
    logUnit: undefined,
    progress: () => undefined,
  });
  const tsa = await opensslTsa(disk.folder);
  end = tsa.end;
  await fingerprint({ ...who, timeStamps: httpTimeStamps({ url: tsa.url }), to: 'R. Vela', how: 'text' });
  await build({
    ...who,
    out: hand,
    paper: undefined,
    identityFolder,
    passphrase: async () => 'only for this check',
    progress: () => undefined,
    timeStamps: httpTimeStamps({ url: tsa.url, policy: '1.2.3.4.5' }),
    bag: true,
  });
  copyFileSync(join(identityFolder, 'identity.crt.pem'), join(disk.folder, 'carrier.crt.pem'));
  for (const script of ['verify_root.py', 'cut_signature.py'])
    copyFileSync(join(DOCS, script), join(disk.folder, script));
});

/** Blocks of commands, each with the lines that the page says must come out. */
const blocks = [...PAGE.matchAll(/```sh\n([\s\S]*?)```(?:(?:(?!```)[\s\S])*?```text\n([\s\S]*?)```)?/g)].map(
  ([, commands = '', expected = '']) => ({ commands, expected: expected.split('\n').filter(Boolean) }),
);

const shell = (commands: string) => {
  const done = spawnSync('bash', ['-euo', 'pipefail', '-c', commands], {
    cwd: disk.folder,
    encoding: 'utf8',
    env: { ...process.env, LC_ALL: 'C.UTF-8' },
  });
  return { status: done.status, out: done.stdout + done.stderr };
};

describe('docs/verify-by-hand.md', () => {
  test('has commands', () => expect(blocks.length).toBeGreaterThan(6));

  run.each(blocks)('$commands', ({ commands, expected }) => {
    const { status, out } = shell(commands);
    expect(out).not.toMatch(/Mismatch|FAILED|WARNING/);
    for (const line of expected) expect(out).toContain(line);
    expect(status, out).toBe(0);
  });

  run('the tree hashes that it prints are those of the tool', async () => {
    const report = await verify({ paths: [hand, join(disk.folder, 'dossier.bag.zip')], trust: [] });
    const { root = '', size = 0 } = report.subjects[0]?.fingerprint ?? {};
    const printed = shell('python3 verify_root.py attachments/ledger.jsonl').out.trim();
    expect(printed).toBe(`${size} ${root}`);
    expect(report.together.map(({ result }) => result)).toEqual([
      'passed',
      'passed',
      'passed',
      // No assessment was given to hold beside the dossier.
      'not-checked',
    ]);
    const [bag = '', signed = ''] = shell(
      `sha256sum dossier.bag/tagmanifest-sha256.txt | cut -c1-64; grep -o '"tagManifestSha256":"[0-9a-f]*"' attachments/manifest.json | cut -d'"' -f4`,
    ).out.split('\n');
    expect(bag).toBe(signed);
  });

  run('its commands find a changed file', () => {
    const changed = readFileSync(hand);
    changed.writeUInt8(changed.readUInt8(changed.length >> 1) ^ 1, changed.length >> 1);
    cpSync(hand, join(disk.folder, 'whole.pdf'));
    writeFileSync(hand, changed);
    const { out } = shell(blocks[0]?.commands ?? '');
    const cms = shell(blocks[1]?.commands ?? '');
    cpSync(join(disk.folder, 'whole.pdf'), hand);
    expect(out).toContain('Digest Mismatch');
    expect(cms.status).not.toBe(0);
  });
});

describe('a dossier with a time stamp (PAdES B-T)', () => {
  const certificate = join(disk.folder, 'carrier.crt.pem');
  const tsaCertificate = join(disk.folder, 'tsa.crt.pem');

  run('is intact for us, with both servers trusted', async () => {
    const { verdict, subjects } = await verify({ paths: [hand], trust: [certificate, tsaCertificate] });
    expect(verdict).toBe('intact');
    const result = (id: string) => subjects[0]?.checks.find((check) => check.id === id)?.result;
    expect(result('signature.time-stamp')).toBe('passed');
    expect(result('time-stamp.trusted')).toBe('passed');
    expect(result('ledger.time-stamps')).toBe('passed');
  });

  checkWith(pyhanko, 'judges signature and time stamp valid', () => {
    const { out } = ask(
      pyhanko,
      ...['sign', 'validate', '--no-revocation-check', '--pretty-print'],
      ...['--trust', certificate, '--trust', tsaCertificate, '--trust-replace', hand],
    );
    expect(out).toContain('The signature is judged VALID.');
    expect(out).toMatch(/timestamp token[\s\S]*TSA/i);
  });
});

describe('the bag', () => {
  checkWith(bagit, 'is valid for the Library of Congress implementation', () => {
    const { out, status } = ask(bagit, '--validate', join(disk.folder, 'dossier.bag'));
    expect(out).toContain('is valid');
    expect(status).toBe(0);
  });

  checkWith(bagit, 'is not valid after a change, as for us', async () => {
    const bag = join(disk.folder, 'changed.bag');
    cpSync(join(disk.folder, 'dossier.bag'), bag, { recursive: true });
    writeFileSync(join(bag, 'data/delivery.yaml'), 'delivery: other\n');
    expect(ask(bagit, '--validate', bag).status).not.toBe(0);
    expect((await verify({ paths: [bag], trust: [] })).verdict).toBe('broken');
  });
});

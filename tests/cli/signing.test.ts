import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type Yard, yard } from './a-delivery.js';

const MAIN = fileURLToPath(new URL('../../dist/cli/main.js', import.meta.url));
let here: Yard;
beforeAll(() => {
  here = yard();
});
afterAll(() => here.end());
const json = async (...args: string[]) => JSON.parse((await here.dossier(...args, '--json')).out);

describe('dossier identity', () => {
  it('make, show, renew: one after the other, with the old certificate kept', async () => {
    const made = await json('identity', 'make', '--name', 'Harrow, Creek & Co', '--identity', 'own');
    expect(made.passphrase.bits).toBeGreaterThan(20);
    delete made.passphrase;
    expect(await json('identity', 'show', '--identity', 'own')).toEqual(made);
    expect((await here.dossier('identity', 'make', '--identity', 'own')).code).toBe(2);
    const renewed = await json('identity', 'renew', '--identity', 'own');
    expect(renewed.subject).toBe(made.subject);
    expect(renewed.certificateSha256).not.toBe(made.certificateSha256);
    expect(renewed.oldCertificate).toContain(`identity-until-${made.validTo.slice(0, 10)}`);
  });

  it('says what is missing', async () => {
    const { code, err } = await here.dossier('identity', 'show', '--identity', 'nowhere');
    expect(code).toBe(2);
    expect(err).toContain('dossier identity make');
    const used = await here.dossier('identity', 'use', here.put('x.p12', 'no'), '--identity', 'other');
    expect(used.code).toBe(2);
    expect(used.err).toContain('does not open this PKCS#12 file');
  });

  it('takes the passphrase from an open file, and never shows it', () => {
    const secret = 'of words that stay secret';
    here.put('secret', `${secret}\n`);
    const done = spawnSync(
      'sh',
      ['-c', `"$0" "$1" identity make --identity by-fd --passphrase-fd 3 3< secret`, process.execPath, MAIN],
      { cwd: here.folder, encoding: 'utf8', env: { ...process.env, DOSSIER_PASSPHRASE: '' } },
    );
    expect(done.stderr).toMatch(/^Copy its folder to a safe place now.*\n$/);
    expect(done.status).toBe(0);
    expect(done.stdout).toContain('The passphrase may be guessed in about');
    expect(done.stdout).not.toContain(secret);
  });

  it.each([
    [['--passphrase-fd', 'three'], 'number of an open file descriptor'],
    [['--passphrase-fd', '77'], 'cannot be read'],
    [['--passphrase-file', 'not-there'], 'not-there: there is no such file\n  Name the file'],
    [['--passphrase-file', '.'], 'this is a folder'],
  ])('%j is refused', async (options, words) => {
    const { code, err } = await here.dossier('identity', 'make', '--identity', 'never', ...options);
    expect(code).toBe(2);
    expect(err).toContain(words);
  });
});

describe('dossier fingerprint', () => {
  it('prints one line and writes nothing, unless it is sent', async () => {
    const delivery = await here.delivery('fingerprinted');
    const { out, code } = await here.dossier('fingerprint', delivery);
    expect(code).toBe(0);
    expect(out).toMatch(/^2026-0714-A 1 [0-9a-f]{64}\n$/);
    expect(here.entries(delivery)).toHaveLength(1);
    const sent = await here.dossier('fingerprint', '-d', delivery, '--to', 'R. Vela', '--how', 'text');
    expect(sent.out).toBe(out);
    expect(here.entries(delivery)[1]).toMatchObject({
      type: 'fingerprint-published',
      body: { size: 1, root: out.trim().split(' ')[2], to: 'R. Vela', how: 'text' },
    });
    expect((await here.dossier('fingerprint', '-d', delivery, '--how', 'text')).code).toBe(2);
  });

  it('verify holds a record against it', async () => {
    const delivery = await here.delivery('held');
    const line = (await here.dossier('fingerprint', delivery)).out.trim();
    await here.dossier('record', 'seal', '88', '--state', 'intact', '--stop', 'load-1', '-d', delivery);
    const { code, out } = await here.dossier('verify', delivery, '--fingerprint', line);
    expect(code).toBe(0);
    expect(out).toContain('INTACT; NOT SIGNED BY ITSELF');
    const other = `${line.slice(0, -1)}${line.endsWith('0') ? '1' : '0'}`;
    const wrong = await here.dossier('verify', delivery, '--brief', '--fingerprint', other);
    expect(wrong.code).toBe(1);
    expect(wrong.out).toContain('are not the ones of the fingerprint');
    // Long answers go on under their own words, where the line ends.
    const found = wrong.out.split('\n').filter((line) => line.startsWith('  '));
    expect(found.length).toBeGreaterThan(1);
    expect(Math.max(...found.map((line) => line.length))).toBeLessThanOrEqual(80);
    expect(found[1]).toMatch(/^ {10}\S/);
    expect((await here.dossier('verify', delivery, '--fingerprint', 'hello')).code).toBe(2);
    // Of a file that is none of ours, what could not be asked is told in one line.
    const none = await here.dossier('verify', here.put('letter.txt', 'hello'));
    expect(none.out).toMatch(/BROKEN\n {2}FAILED {2}The file is a PDF/);
    expect(
      none.out.match(/not checked {2}\d+ checks, each for the same reason: An earlier check/g),
    ).toHaveLength(1);
    expect(none.out.split('\n').length).toBeLessThan(8);
  });

  it('says when the time-stamp server cannot be had, and records nothing', async () => {
    const delivery = await here.delivery('unstamped');
    const { code, err } = await here.dossier('fingerprint', delivery, '--tsa', 'http://127.0.0.1:9/');
    expect(code).toBe(2);
    expect(err).toContain('cannot be reached');
    expect(here.entries(delivery)).toHaveLength(1);
  });
});

describe('a statement that is signed', () => {
  it('is checked by verify, and a changed word is found', async () => {
    const delivery = await here.delivery('stated');
    const args = ['record', 'statement', 'I was on the dock.', '--sign', '--identity', 'person'];
    expect((await here.dossier('identity', 'make', '--name', 'R. Vela', '--identity', 'person')).code).toBe(
      0,
    );
    const where = ['--stop', 'load-1', '-d', delivery];
    const unnamed = await here.dossier(...args, ...where);
    expect(unnamed.code).toBe(2);
    expect(unnamed.err).toContain('--by NAME');
    const said = await here.dossier(...args, '--by', 'R. Vela', ...where);
    expect(said.out).toContain('signed');
    const report = await json('verify', delivery, '--trust', here.at('person', 'identity.crt.pem'));
    const check = report.subjects[0].checks.find((one: { id: string }) => one.id === 'ledger.statements');
    expect(check.result).toBe('passed');
  });

  it('needs an identity that is there', async () => {
    const delivery = await here.delivery('unsigned');
    const { code, err } = await here.dossier(
      ...['record', 'statement', 'x', '--sign', '--identity', 'nobody', '--by', 'N', '--stop', 'load-1'],
      ...['-d', delivery],
    );
    expect(code).toBe(2);
    expect(err).toContain('There is no identity here');
    expect(here.entries(delivery)).toHaveLength(1);
  });
});

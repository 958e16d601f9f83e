import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { mkdtemp } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { describe, expect, it } from 'vitest';
import { modulesOf } from './loaded.js';
import { dossier, dossierHere, MAIN, PROGRAM } from './run.js';

const folder = fileURLToPath(new URL('.', pathToFileURL(PROGRAM)));
const files = readdirSync(folder).filter((name) => name.endsWith('.js'));

describe('the program as it is installed: the commands put into few files by npm run build', () => {
  it('finds everything that its modules name by where they lie themselves', () => {
    const named = files.flatMap((file) =>
      [
        ...readFileSync(join(folder, file), 'utf8').matchAll(
          /new URL\("(\.\.?\/[^"]+)", import\.meta\.url\)\.href/g,
        ),
      ].map(([, path = '']) => path),
    );
    expect(named.length).toBeGreaterThan(10);
    expect(named.filter((path) => !existsSync(join(folder, path)))).toEqual([]);
  });

  it('has the address of no module in a file of its own', () => {
    // What is left is the address that a module's own is reckoned from, and that of a library that finds its parts by it.
    const bare = files.filter((file) =>
      /(?<!", )import\.meta\.url/.test(
        readFileSync(join(folder, file), 'utf8').replaceAll('createRequire(import.meta.url)', ''),
      ),
    );
    expect(bare).toEqual([]);
  });

  it('asks for what is missing from a quarter of the files', async () => {
    const missing = ['gaps', '--at', '2026-07-15T00:00Z', join(tmpdir(), 'no-delivery')];
    const [program, modules] = await Promise.all([
      modulesOf(PROGRAM, ...missing),
      modulesOf(MAIN, ...missing),
    ]);
    expect(modules.length).toBeGreaterThan(300);
    expect(program.length).toBeLessThan(modules.length / 4);
  });

  it('says its version', async () => {
    expect(await dossier(['--version'], {}, undefined, PROGRAM)).toEqual(await dossier(['--version']));
  });

  it('answers as the single modules do, with workers, templates and words', async () => {
    const room = await mkdtemp(join(tmpdir(), 'program-'));
    const said = async (main: string) => {
      const delivery = join(room, main === MAIN ? 'modules' : 'program');
      const run = async (...args: string[]) => {
        const { code, out, err } =
          main === MAIN ? await dossierHere(args) : await dossier(args, {}, undefined, main);
        const plain = (text: string) =>
          text.replaceAll(delivery, 'HERE').replace(/(?<=^Fingerprint .*)\b[0-9a-f]{64}$/m, 'HASH');
        return [code, plain(out), plain(err)];
      };
      return [
        await run('new', delivery, '--file', 'fixtures/demo/delivery.yaml'),
        // A worker decodes the photo.
        await run(
          'collect',
          'fixtures/demo/evidence/photos/IMG_0415.HEIC',
          'fixtures/demo/evidence/unit',
          '-d',
          delivery,
        ),
        await run('gaps', delivery, join(room, 'nowhere'), '--at', '2026-07-15T00:00Z'),
        await run('verify', delivery),
      ];
    };
    const [program, modules] = [await said(PROGRAM), await said(MAIN)];
    expect(program.map(([code]) => code)).toEqual([0, 0, 2, 0]);
    expect(program).toEqual(modules);
  });
});

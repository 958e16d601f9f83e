import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { delimiter, join, resolve } from 'node:path';
import { test } from 'vitest';

const OUTSIDE = resolve(import.meta.dirname, '../../.outside');

/** An independent program that a check asks. */
export interface Program {
  name: string;
  /** Command and first arguments; undefined when it is not on this machine. */
  command: readonly string[] | undefined;
}

function onPath(name: string): string | undefined {
  return (process.env.PATH ?? '')
    .split(delimiter)
    .map((folder) => join(folder, name))
    .find((file) => existsSync(file));
}

/** From an environment variable such as OUTSIDE_QPDF (empty: leave it out), else from .outside/, else from PATH. */
function program(name: string, inOutside?: string): Program {
  const given = process.env[`OUTSIDE_${name.toUpperCase()}`];
  const own = inOutside === undefined ? undefined : join(OUTSIDE, inOutside);
  const file = given ?? (own !== undefined && existsSync(own) ? own : onPath(name));
  return { name, command: file === undefined || file === '' ? undefined : [file] };
}

function veraPdf(): Program {
  const java = onPath('java');
  const jar = join(OUTSIDE, 'verapdf/validate-pdfa.jar');
  const here = java !== undefined && existsSync(jar);
  const classPath = [jar, join(OUTSIDE, 'verapdf/lib/*')].join(delimiter);
  return { name: 'veraPDF', command: here ? [java, '-cp', classPath, 'ValidatePdfA'] : undefined };
}

export const openssl = program('openssl');
export const python = program('python3');
export const pdfsig = program('pdfsig');
export const pdfdetach = program('pdfdetach');
export const pdffonts = program('pdffonts');
export const pdftotext = program('pdftotext');
export const qpdf = program('qpdf');
export const exiftool = program('exiftool');
/** Of util-linux: gives a command a terminal. */
export const script = program('script');
/** Named heif-convert before libheif 1.18. */
export const heifDec =
  [program('heif-dec'), program('heif-convert')].find((one) => one.command) ?? program('heif-dec');
export const pyhanko = program('pyhanko', 'pyhanko/bin/pyhanko');
export const bagit = program('bagit', 'bagit/bin/bagit.py');
/** Python with SciPy; no other Python will do. */
export const scipy: Program = (() => {
  const file = join(OUTSIDE, 'scipy/bin/python');
  return { name: 'SciPy', command: existsSync(file) ? [file] : undefined };
})();
/** Python with the package of that name, which reads tables as it is told. */
export const pandas = program('pandas', 'pandas/bin/python');
/** LibreOffice without a window. */
export const soffice = program('soffice');
export const verapdf = veraPdf();
/** A browser, driven by Playwright. */
export const chromium = program('chromium');
/** The next long-term version of the platform. */
export const node24 = program('node24', 'node24/node_modules/node/bin/node');

/** A check that asks a program. Without the program it is skipped under a name that says so. */
export function checkWith(asked: Program, title: string, run: () => void | Promise<void>): void {
  if (asked.command === undefined) test.skip(`not run, ${asked.name} is not here: ${title}`, run);
  else test(`${asked.name}: ${title}`, run);
}

/** Runs a program to its end; both outputs as text, in a zone and language that do not vary. */
export function ask(asked: Program, ...more: string[]): { status: number; out: string } {
  const [file, ...first] = asked.command ?? [];
  if (file === undefined) throw new Error(`${asked.name} is not here`);
  const done = spawnSync(file, [...first, ...more], {
    encoding: 'utf8',
    maxBuffer: 64 * 1024 * 1024,
    env: { ...process.env, LC_ALL: 'C.UTF-8', TZ: 'UTC' },
  });
  if (done.error !== undefined) throw done.error;
  return { status: done.status ?? -1, out: done.stdout + done.stderr };
}

/** A folder that is gone when the caller says so. */
export function scratch(): {
  put: (name: string, bytes: Uint8Array | string) => string;
  folder: string;
  end: () => void;
} {
  const folder = mkdtempSync(join(tmpdir(), 'outside-'));
  return {
    folder,
    put: (name, bytes) => {
      writeFileSync(join(folder, name), bytes);
      return join(folder, name);
    },
    end: () => rmSync(folder, { recursive: true, force: true }),
  };
}

import { spawn } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { terminalOutput } from '../../src/cli/output.js';
import { runCli } from '../../src/cli/program.js';

export const MAIN = fileURLToPath(new URL('../../dist/cli/main.js', import.meta.url));
/** The same as it is installed, which `npm run build` puts together. */
export const PROGRAM = fileURLToPath(new URL('../../dist/program/dossier.js', import.meta.url));

export interface Ran {
  code: number | null;
  out: string;
  err: string;
}

/** Runs the built command line as a process, as a user would. */
export function dossier(
  args: readonly string[],
  env: Record<string, string> = {},
  cwd?: string,
  main = MAIN,
): Promise<Ran> {
  return new Promise((done, fail) => {
    const child = spawn(process.execPath, [main, ...args], {
      cwd,
      env: { ...process.env, DOSSIER_BY: 'Test', NO_COLOR: '1', ...env },
      stdio: ['ignore', 'pipe', 'pipe'],
    });
    let out = '';
    let err = '';
    child.stdout.setEncoding('utf8').on('data', (text: string) => {
      out += text;
    });
    child.stderr.setEncoding('utf8').on('data', (text: string) => {
      err += text;
    });
    child.on('error', fail);
    child.on('close', (code) => done({ code, out, err }));
  });
}

/**
 * Runs one command line inside the test's own process: for tables of small commands, where starting Node each
 * time would cost more than the command. What a process does beyond this is tested with `dossier`.
 */
export async function dossierHere(
  args: readonly string[],
  env: Record<string, string> = {},
  cwd = process.cwd(),
): Promise<Ran> {
  const told = { out: '', err: '' };
  const pipe = (name: 'out' | 'err') => ({
    write: (text: string) => {
      told[name] += text;
    },
  });
  const set = { DOSSIER_BY: 'Test', NO_COLOR: '1', ...env };
  const before = {
    folder: process.cwd(),
    env: Object.keys(set).map((key) => [key, process.env[key]] as const),
  };
  process.chdir(cwd);
  Object.assign(process.env, set);
  try {
    const code = await runCli([...args], terminalOutput(pipe('out'), pipe('err')));
    return { code, ...told };
  } finally {
    process.chdir(before.folder);
    for (const [key, value] of before.env)
      if (value === undefined) delete process.env[key];
      else process.env[key] = value;
  }
}

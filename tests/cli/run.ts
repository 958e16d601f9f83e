import { spawn } from 'node:child_process';
import { fileURLToPath } from 'node:url';

export const MAIN = fileURLToPath(new URL('../../dist/cli/main.js', import.meta.url));

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
): Promise<Ran> {
  return new Promise((done, fail) => {
    const child = spawn(process.execPath, [MAIN, ...args], {
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

import { spawn } from 'node:child_process';
import { fileURLToPath } from 'node:url';

const TRACE = fileURLToPath(new URL('./trace.worker.js', import.meta.url));

/** Addresses of the modules that a program loads, whatever comes of it. */
export function modulesOf(file: string, ...args: string[]): Promise<string[]> {
  return new Promise((done, fail) => {
    const child = spawn(process.execPath, ['--import', TRACE, file, ...args], {
      stdio: ['ignore', 'ignore', 'ignore', 'pipe'],
    });
    let said = '';
    child.stdio[3]?.on('data', (text: Buffer) => {
      said += text.toString('utf8');
    });
    child.on('error', fail);
    child.on('close', () => done(said.split('\n').filter((line) => line !== '')));
  });
}

/** The packages among them. */
export function packagesIn(modules: readonly string[]): string[] {
  const names = modules.flatMap((url) => /.*\/node_modules\/((?:@[^/]+\/)?[^/]+)\//.exec(url)?.[1] ?? []);
  return [...new Set(names)].sort();
}

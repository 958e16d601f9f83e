import { spawn } from 'node:child_process';

const OPENERS: Partial<Record<NodeJS.Platform, readonly [string, ...string[]]>> = {
  darwin: ['open'],
  // `start` takes its first quoted word for a title.
  win32: ['cmd', '/c', 'start', ''],
};

/** Opens a file with the program that the system has for it. False where none could be started. */
export function openFile(path: string): Promise<boolean> {
  const [program, ...args] = OPENERS[process.platform] ?? ['xdg-open'];
  return new Promise((done) => {
    const child = spawn(program, [...args, path], { stdio: 'ignore', detached: true });
    child.on('error', () => done(false));
    child.on('spawn', () => {
      child.unref();
      done(true);
    });
  });
}

import { type ChildProcess, fork } from 'node:child_process';
import { fileURLToPath } from 'node:url';

/** How far two pictures are apart, or why that could not be found out. */
export type Apart = { shape: number; worst: number } | { why: string };

const SECONDS = 30;

/** Compares pictures, one pair after the other, in a process that is started anew when one brings it down. */
export class Comparer {
  private child: ChildProcess | undefined;

  compare(original: Uint8Array, plate: Uint8Array): Promise<Apart> {
    const child = this.running();
    return new Promise((done) => {
      const end = (apart: Apart, stop: boolean) => {
        clearTimeout(timer);
        child.removeAllListeners();
        if (stop) this.close();
        done(apart);
      };
      const timer = setTimeout(() => end({ why: `it took longer than ${SECONDS} s` }, true), SECONDS * 1000);
      child.once('message', (apart) => end(apart as Apart, false));
      child.once('error', (error) => end({ why: error.message }, true));
      child.once('exit', () => end({ why: 'it stopped the decoder' }, true));
      child.send({ original, plate }, (error) => {
        if (error !== null) end({ why: error.message }, true);
      });
    });
  }

  close(): void {
    this.child?.kill('SIGKILL');
    this.child = undefined;
  }

  private running(): ChildProcess {
    this.child ??= fork(fileURLToPath(new URL('./alike.worker.js', import.meta.url)), {
      serialization: 'advanced',
      execArgv: [],
      stdio: ['ignore', 'ignore', 'ignore', 'ipc'],
    });
    return this.child;
  }
}

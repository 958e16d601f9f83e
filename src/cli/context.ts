import type { ExitCode } from './exit.js';
import type { Output } from './output.js';

/** What a command needs from its surroundings, and where it leaves its answer. */
export interface CliContext {
  output: Output;
  /** Raises the exit code of this run; the highest one wins. */
  exit(code: ExitCode): void;
  now(): Date;
  /** Aborted by Ctrl-C, for work that takes long. Commands that don't ask for it are ended by Ctrl-C at once. */
  interruption(): AbortSignal;
}

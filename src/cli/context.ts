import type { ExitCode } from './exit.js';
import type { Output } from './output.js';

/** What a command needs of the world, and where it leaves its answer. */
export interface CliContext {
  output: Output;
  /** Raises the exit code of this run; the highest one said wins. */
  exit(code: ExitCode): void;
  now(): Date;
}

import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { TestProject } from 'vitest/node';

declare module 'vitest' {
  export interface ProvidedContext {
    /** A folder of this run of the tests, for what is made once and only read; it goes when the run ends. */
    runFolder: string;
  }
}

export default function setup(project: TestProject): () => void {
  const folder = mkdtempSync(join(tmpdir(), 'tests-'));
  project.provide('runFolder', folder);
  // Where Node keeps compiled code of the commands that tests start.
  process.env.XDG_CACHE_HOME = join(folder, 'cache');
  return () => rmSync(folder, { recursive: true, force: true });
}

import { readFileSync } from 'node:fs';
import { z } from 'zod';

const packageFile = z.object({ name: z.string(), version: z.string() });

/** Name and version of this tool, as its package says. */
export function tool(): { name: string; version: string } {
  const text = readFileSync(new URL('../../package.json', import.meta.url), 'utf8');
  const { name, version } = packageFile.parse(JSON.parse(text));
  return { name, version };
}

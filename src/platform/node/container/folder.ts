import { constants, createReadStream } from 'node:fs';
import { open, readdir } from 'node:fs/promises';
import { join } from 'node:path';
import {
  type ContainedFile,
  type Container,
  LIMITS,
  requireSafePath,
} from '../../../core/verify/container/container.js';
import { refuse } from '../../../core/verify/malformed.js';

/** Large reads keep hashing near the disk's speed. */
const CHUNK = 1024 * 1024;

/**
 * A folder with everything below it, or only with what `wanted` lets in.
 * Links and special files are refused, not followed (CWE-59).
 * @throws Malformed
 */
export async function openFolder(
  folder: string,
  wanted: (path: string) => boolean = () => true,
): Promise<Container> {
  const files = new Map<string, ContainedFile>();
  const leftAside: string[] = [];
  await walk(folder, '', { files, leftAside, seen: new Set(), wanted });
  return { files, leftAside, close: () => undefined };
}

interface Walk {
  files: Map<string, ContainedFile>;
  leftAside: string[];
  seen: Set<string>;
  wanted: (path: string) => boolean;
}

async function walk(folder: string, below: string, state: Walk): Promise<void> {
  const entries = await readdir(join(folder, below), { withFileTypes: true });
  if (below.split('/').length > LIMITS.depth) refuse('folders nested too deep');
  for (const entry of entries.sort((a, b) => (a.name < b.name ? -1 : 1))) {
    const path = below === '' ? entry.name : `${below}/${entry.name}`;
    if (!state.wanted(entry.isDirectory() ? `${path}/` : path)) {
      if (entry.isDirectory()) state.leftAside.push(`${path}/`);
      continue;
    }
    if (entry.isDirectory()) {
      await walk(folder, path, state);
      continue;
    }
    requireSafePath(path, state.seen);
    if (!entry.isFile()) refuse(`a link or special file: ${JSON.stringify(path)}`);
    state.files.set(path, await contained(join(folder, path), path));
  }
}

async function contained(file: string, path: string): Promise<ContainedFile> {
  const flags = constants.O_RDONLY | (constants.O_NOFOLLOW ?? 0) | (constants.O_NONBLOCK ?? 0);
  const openIt = async () =>
    open(file, flags).catch((error: unknown) =>
      refuse(`${path} cannot be read: ${error instanceof Error ? error.message : 'no reason given'}`),
    );
  const handle = await openIt();
  const stat = await handle.stat();
  await handle.close();
  if (!stat.isFile()) refuse(`a link or special file: ${JSON.stringify(path)}`);
  return {
    bytes: stat.size,
    open: async () => {
      const again = await openIt();
      return createReadStream('', { fd: again, highWaterMark: CHUNK });
    },
  };
}

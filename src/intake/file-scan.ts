import { lstat, readdir } from 'node:fs/promises';
import { basename, join } from 'node:path';
import type { Problem } from '../core/model/error.js';
import { omitUndefined } from '../core/model/omit-undefined.js';

export interface FoundFile {
  path: string;
  /** Path as its captions.csv sees it, when that is not `path`: `…/chat.zip/photos/a.jpg` of a file in an archive. */
  at?: string;
  /** Name as shown: the file's own, or relative to the given folder, with `/`. */
  name: string;
  bytes: number;
}

export interface FileScan {
  /** Sorted by name within each path given, each path in turn. */
  files: FoundFile[];
  skipped: { name: string; why: string }[];
  problems: Problem[];
}

/** More files than any delivery has; a wrong folder (a home folder, a disk) is stopped early. */
const MOST_FILES = 5_000;
const MOST_LEVELS = 32;

/** Files by which the folder of a delivery is known. */
const RECORD = ['ledger.jsonl', 'checkpoint'];

/** Files that operating systems leave in folders. */
const IGNORED =
  /^(?:thumbs\.db|ehthumbs\.db|desktop\.ini|__macosx|icon\r|\$recycle\.bin|system volume information|~\$.*|.*~)$/i;

/** Why a file is ignored by its name, or by a folder in its path. */
export function ignoredReason(path: string): string | undefined {
  const parts = path.split('/');
  if (parts.some((part) => IGNORED.test(part))) return 'left by the operating system';
  return parts.some((part) => part.startsWith('.')) ? 'hidden' : undefined;
}

/**
 * Finds the regular files under the given paths. Symbolic links are never followed; pipes, sockets and devices are
 * rejected; hidden and system files are skipped and reported. Never throws: an unreadable path is a problem.
 */
export async function scanFiles(paths: readonly string[], most = MOST_FILES): Promise<FileScan> {
  const found: Finding = { files: [], skipped: [], problems: [], paths: new Set() };
  for (const path of paths) await visit(path, basename(path), 0, found, most);
  const { files, skipped, problems } = found;
  return { files, skipped, problems };
}

type Finding = FileScan & { paths: Set<string> };

async function visit(path: string, name: string, depth: number, found: Finding, most: number): Promise<void> {
  const problem = (message: string, fix?: string): void => {
    found.problems.push({
      code: 'unreadable-file',
      message,
      where: { file: path },
      ...omitUndefined({ fix }),
    });
  };
  if (found.files.length >= most) {
    if (!found.problems.some((p) => p.code === 'file-too-large'))
      found.problems.push({
        code: 'file-too-large',
        message: `more than ${most} files; the rest is left out`,
        where: { file: path },
        fix: 'name the folder of this delivery alone',
      });
    return;
  }
  try {
    const stat = await lstat(path);
    if (stat.isSymbolicLink())
      problem('a symbolic link; links are not followed', 'name the file that it points to');
    else if (stat.isDirectory()) await visitFolder(path, name, depth, found, most, problem);
    else if (!stat.isFile()) problem('not a regular file (a pipe, socket or device)');
    else if (!found.paths.has(path)) {
      found.paths.add(path);
      found.files.push({ path, name, bytes: stat.size });
    }
  } catch (cause) {
    problem(reason(cause), 'check the name and the permissions');
  }
}

async function visitFolder(
  path: string,
  name: string,
  depth: number,
  found: Finding,
  most: number,
  problem: (message: string, fix?: string) => void,
): Promise<void> {
  if (depth >= MOST_LEVELS) return problem(`deeper than ${MOST_LEVELS} folders`);
  // Code-unit order: the same on every machine, whatever its language.
  const names = (await readdir(path)).sort((a, b) => (a < b ? -1 : a > b ? 1 : 0));
  if (RECORD.every((file) => names.includes(file)))
    return problem(
      'a record of a delivery, which is not taken in as files',
      `if it is another copy of this delivery: dossier merge ${JSON.stringify(path)}`,
    );
  for (const child of names) {
    // The given folder is not part of the names inside it.
    const shown = depth === 0 ? child : `${name}/${child}`;
    const why = ignoredReason(child);
    if (why !== undefined) found.skipped.push({ name: shown, why });
    else await visit(join(path, child), shown, depth + 1, found, most);
  }
}

function reason(cause: unknown): string {
  const code = cause instanceof Error && 'code' in cause ? String(cause.code) : '';
  switch (code) {
    case 'ENOENT':
      return 'there is no such file or folder';
    case 'EACCES':
    case 'EPERM':
      return 'reading it is not permitted';
    case 'ELOOP':
      return 'too many links';
    default:
      return `it cannot be read${code === '' ? '' : ` (${code})`}`;
  }
}

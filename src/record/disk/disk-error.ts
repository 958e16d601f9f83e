import { DossierError, type ErrorCode } from '../../core/model/error.js';

/** The code of an operating-system error, such as ENOENT; undefined for anything else that was thrown. */
export function errorCode(error: unknown): string | undefined {
  if (!(error instanceof Error) || !('code' in error)) return undefined;
  return typeof error.code === 'string' && /^E[A-Z0-9]+$/.test(error.code) ? error.code : undefined;
}

const REASONS: Record<string, string> = {
  ENOSPC: 'the disk is full',
  EDQUOT: 'the disk quota is used up',
  EROFS: 'the disk is read-only',
  EACCES: 'permission denied',
  EPERM: 'the system does not allow it',
  EIO: 'the disk reports an error',
  ENOENT: 'it is not there',
  ENOTDIR: 'a part of the path is not a folder',
  EISDIR: 'it is a folder',
  EMFILE: 'too many files are open',
  ENAMETOOLONG: 'the name is too long',
  ELOOP: 'it is a symbolic link',
};

const FIXES: Record<string, string> = {
  ENOSPC: 'Free some space and run the command again.',
  EDQUOT: 'Free some space and run the command again.',
  EROFS: 'Use a folder that can be written to.',
  EACCES: 'Check who may read and write there.',
  EPERM: 'Check who may read and write there.',
  EIO: 'Copy the folder to another disk before going on.',
};

/** The operating system's reason in words: `the disk is full (ENOSPC)`. */
export function reasonOf(code: string): string {
  const words = REASONS[code];
  return words === undefined ? code : `${words} (${code})`;
}

/** What to say of a file that the user named and that can't be read: why, and what to do. */
export function unreadable(
  file: string,
  cause: unknown,
  code: ErrorCode = 'unreadable-file',
  fix = 'Check the name, and the folder that it is looked for in.',
): DossierError {
  const why = errorCode(cause);
  if (why === 'ENOENT' || why === 'ENOTDIR')
    return new DossierError(code, 'there is no such file', { where: { file }, fix, cause });
  if (why === 'EISDIR')
    return new DossierError(code, 'this is a folder, not a file', { where: { file }, fix, cause });
  const reason = why === undefined ? '' : `: ${reasonOf(why)}`;
  return new DossierError(code, `this file cannot be read${reason}`, {
    where: { file },
    fix: FIXES[why ?? ''] ?? 'Check who may read it.',
    cause,
  });
}

/**
 * Runs file operations and turns the system's errors into `DossierError` 'disk': cannot `doing`, which file, why.
 * Anything without a system code is a bug and passes through.
 */
export async function onDisk<T>(doing: string, file: string, action: () => Promise<T>): Promise<T> {
  try {
    return await action();
  } catch (error) {
    const code = errorCode(error);
    if (code === undefined) throw error;
    throw new DossierError('disk', `cannot ${doing}: ${reasonOf(code)}`, {
      where: { file },
      fix: FIXES[code] ?? 'Check the disk and run the command again.',
      cause: error,
    });
  }
}

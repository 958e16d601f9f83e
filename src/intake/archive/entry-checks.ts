import { type Entry, validateFileName } from 'yauzl';

/** Unix file types in the upper half of the external attributes (APPNOTE 4.4.15, `stat.h` S_IFMT). */
const FILE_TYPE = 0o170000;
const REGULAR = 0o100000;
const FOLDER = 0o040000;
const LINK = 0o120000;
/** Upper byte of "version made by" for Unix and for macOS (APPNOTE 4.4.2). */
const UNIX_HOSTS = new Set([3, 19]);

/** Why a name must not be followed; undefined when it stays inside. */
export function nameProblem(name: string): string | undefined {
  if (name === '') return 'it has no name';
  if (name.length > 1000) return 'its name is longer than 1000 characters';
  if (name.includes('\0')) return 'its name holds a zero byte';
  // A backslash is a separator on one system and a letter on another: two readings of one name.
  return validateFileName(name) === null ? undefined : 'its name leads out of the archive';
}

/** Why an entry is not a plain file. A link could show a file of this machine as evidence (CWE-59). */
export function specialFileReason(entry: Entry): string | undefined {
  if (!UNIX_HOSTS.has(entry.versionMadeBy >>> 8)) return undefined;
  const type = (entry.externalFileAttributes >>> 16) & FILE_TYPE;
  if (type === LINK) return 'it is a symbolic link';
  return type === 0 || type === REGULAR || type === FOLDER ? undefined : 'it is not a regular file';
}

/** Detects entries that share bytes, which make a bomb (Fifield, "A better zip bomb", WOOT 2019). */
export function overlapDetector(): (entry: Entry) => string | undefined {
  const taken: { from: number; to: number }[] = [];
  return (entry) => {
    // Local header: 30 bytes and the name at least (APPNOTE 4.3.7).
    const from = entry.relativeOffsetOfLocalHeader;
    const to = from + 30 + entry.fileNameLength + entry.compressedSize;
    const at = lowerBound(taken, from);
    const [before, after] = [taken[at - 1], taken[at]];
    if ((before !== undefined && before.to > from) || (after !== undefined && after.from < to))
      return 'it shares bytes with another entry';
    taken.splice(at, 0, { from, to });
    return undefined;
  };
}

function lowerBound(spans: readonly { from: number }[], from: number): number {
  let [low, high] = [0, spans.length];
  while (low < high) {
    const middle = (low + high) >>> 1;
    if ((spans[middle]?.from ?? 0) < from) low = middle + 1;
    else high = middle;
  }
  return low;
}

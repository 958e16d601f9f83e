import type { Problem } from '../../core/model/error.js';
import type { ContainerRef, EvidenceId } from '../../core/model/evidence.js';
import type { NestedFile } from '../../intake/draft.js';
import type { ExaminedFile } from '../../intake/examine.js';
import type { FoundFile } from '../../intake/file-scan.js';

/** Deepest nesting of e-mails and archives, and of archives: forwarded mail is well within it. */
const MOST_CONTAINERS = 3;
const MOST_ARCHIVES = 2;
/** Limits for all files from one outermost file, however nested. */
const MOST_INSIDE = { files: 5_000, bytes: 4 * 1024 ** 3, containers: 200 };

/** Nesting depth of a file, and what may still be extracted from its outermost file. */
export interface NestingDepth {
  containers: number;
  archives: number;
  left: { files: number; bytes: number; containers: number };
}

/** Nesting depth with the evidence that the file came in. */
export interface NestingContext extends NestingDepth {
  within: EvidenceId;
}

/** The depth one e-mail or archive further in. */
export function oneLevelDeeper(outer: NestingDepth | undefined, archive: boolean): NestingDepth {
  return {
    containers: (outer?.containers ?? 0) + 1,
    archives: (outer?.archives ?? 0) + (archive ? 1 : 0),
    left: outer?.left ?? { ...MOST_INSIDE },
  };
}

/** The files that may be extracted, deducted from the rest, and why others may not. */
export function allowedFiles(
  files: readonly NestedFile[],
  { containers, archives, left }: NestingDepth,
): { files: NestedFile[]; left: string[] } {
  if (containers > MOST_CONTAINERS || archives > MOST_ARCHIVES)
    return { files: [], left: files.length === 0 ? [] : [`${counted(files.length)} nested too deep`] };
  // Opening one costs much more than a file in it, and a small archive holds thousands of smaller ones.
  left.containers -= 1;
  if (left.containers < 0)
    return {
      files: [],
      left:
        files.length === 0
          ? []
          : [`${counted(files.length)} in more than ${MOST_INSIDE.containers} archives of one file`],
    };
  const may = files.filter(({ bytes }) => {
    if (left.files < 1 || left.bytes < bytes) return false;
    left.files -= 1;
    left.bytes -= bytes;
    return true;
  });
  const more = files.length - may.length;
  return { files: may, left: more === 0 ? [] : [`${counted(more)} more than one file may bring`] };
}

export function keptInsideProblem(container: FoundFile, why: string): Problem {
  return {
    code: 'file-too-large',
    message: `${why}; kept inside it and not taken out`,
    where: { file: container.name },
    fix: 'unpack it yourself and collect what belongs to this delivery',
  };
}

function counted(files: number): string {
  return files === 1 ? '1 file is' : `${files} files are`;
}

/** The container of a file inside one, and its name there. */
export function containerRef(
  around: NestingContext | undefined,
  inside: NestedFile | undefined,
): ContainerRef | undefined {
  return around && inside && { evidence: around.within, entry: inside.entry.slice(0, 1000) };
}

/** Whether a file was taken for an archive. */
export function isArchive({ received }: ExaminedFile): boolean {
  return received.file.type === 'application/zip';
}

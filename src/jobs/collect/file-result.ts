import type { DossierError, Problem } from '../../core/model/error.js';
import type { EvidenceId, Sha256 } from '../../core/model/evidence.js';
import type { ContainerContents } from '../../intake/draft.js';
import type { ExaminedFile } from '../../intake/examine.js';

/** What examining one file gave: evidence to enter, bytes that the record holds, or a refusal. */
export type FileResult =
  | {
      is: 'held';
      sha256: Sha256;
      inside?: ContainerContents | undefined;
      archive: boolean;
      problems?: Problem[];
      /** A log that is already read with this mapping. */
      readSo?: boolean;
    }
  | { is: 'refused'; error: DossierError }
  /** A readings table that the record holds, some rows of which may not be recorded. */
  | { is: 'table'; evidence: EvidenceId; examined: ExaminedFile }
  | { is: 'examined'; examined: ExaminedFile };

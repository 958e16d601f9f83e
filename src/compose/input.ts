import type { Exhibit } from '../model/manifest.js';
import type { Assessment } from '../model/results.js';
import type { RecordState } from '../model/state.js';
import type { Instant } from '../model/time.js';
import type { UnitLog } from '../model/unit-log.js';
import type { ReadOriginal } from './pictures.js';
import type { PreparedPlates } from './plates.js';
import type { Attachment } from './typeset.js';

/** Everything one dossier is made of. */
export interface ComposeInput {
  state: RecordState;
  assessment: Assessment;
  /** The logs that `assessment.temperatures` speaks of, for the charts. */
  logs: readonly UnitLog[];
  exhibits: readonly Exhibit[];
  /** Put inside the PDF as they are: manifest, ledger, tables, originals. */
  attachments: readonly Attachment[];
  /** Path or bytes of an original; may throw, then its plate says so. */
  readOriginal: ReadOriginal;
  builtAt: Instant;
  fingerprint: { delivery: string; size: number; root: string };
  signer: { name: string; certificateSha256: string };
  tool: { name: string; version: string };
  /** What the plates show; prepared here when left out. */
  plates?: PreparedPlates;
  /** Folder with `dossier/` and `words/`; the shipped templates when left out. */
  templates?: string;
}

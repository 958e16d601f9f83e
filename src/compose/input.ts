import type { JoinedLogs } from '../core/assess/logs/join.js';
import type { Exhibit, Volume } from '../core/model/manifest.js';
import type { Assessment } from '../core/model/results.js';
import type { RecordState } from '../core/model/state.js';
import type { Instant } from '../core/model/time.js';
import type { UnitLog } from '../core/model/unit-log.js';
import type { PreparedImages } from './exhibit-images.js';
import type { LanguageWords } from './language.js';
import type { PictureQuality, ReadOriginal } from './pictures.js';
import type { CarrierTemplates } from './templates.js';
import type { Attachment } from './typeset.js';

/** The input of one dossier, or of one assessment. */
export interface ComposeInput {
  /** The dossier by default. */
  volume?: Volume;
  state: RecordState;
  assessment: Assessment;
  /** The logs of `assessment.temperatures`, for the charts. */
  logs: readonly UnitLog[];
  /** Logs that cover the same time, and where downloads of one instrument disagree. */
  overlaps?: Omit<JoinedLogs, 'joined'>;
  exhibits: readonly Exhibit[];
  /** Attached to the PDF unchanged: manifest, ledger, tables, originals. */
  attachments: readonly Attachment[];
  /** Path or bytes of an original; may throw, then its image says so. */
  readOriginal: ReadOriginal;
  builtAt: Instant;
  fingerprint: { delivery: string; size: number; root: string };
  signer: { name: string; certificateSha256: string };
  tool: { name: string; version: string };
  /** Exhibit images; prepared here by default. */
  plates?: PreparedImages;
  /** The shipped templates by default. */
  templates?: CarrierTemplates;
  /** The words of the page's language, when they were read before. */
  words?: LanguageWords;
  /** Sentences that published values stand in, by passage; loaded here by default. */
  quotations?: ReadonlyMap<string, string>;
  /** How pictures and originals were chosen; printed with the custody. */
  sizing?: {
    mostBytes: number;
    picture: PictureQuality;
    originalsInside: number;
    originalsNotInside: number;
  };
  /** Present for a redacted copy. */
  copy?: RedactionSummary;
}

/** The reader of a redacted copy, and what it leaves out. */
export interface RedactionSummary {
  name: string;
  title: string;
  positions: boolean;
  sectionsLeftOut: readonly string[];
  evidenceLeftOut: number;
  entriesLeftOut: number;
  /** How many entries of the whole record were corrected and struck: left out, and counted. */
  putRight: { corrected: number; struck: number };
  /** Findings and requirements of the whole record that rest on redacted evidence. */
  findingsLeftOut: number;
  requirementsLeftOut: number;
}

import type { Volume } from '../../core/model/manifest.js';
import type { TimeStampClient } from '../../core/ports/time-stamps.js';
import type { LongWork } from '../../core/ports/work.js';
import type { OpenDelivery } from '../delivery.js';
import type { SignedBy } from '../signing/signed-by.js';
import type { Sizing } from './size.js';

/** Options of a build. */
export interface BuildOptions extends OpenDelivery, LongWork {
  /** Path of the file; by default in the delivery's own folder dossiers or assessments. */
  out: string | undefined;
  /** `Letter` or `A4`; what delivery.yaml says when left out. */
  paper: string | undefined;
  /** Time-stamp server that confirms the signature, such as `httpTimeStamps({ url })`. */
  timeStamps?: TimeStampClient;
  /** The assessment of the last dossier, over the same fingerprint, in its place. */
  assessment?: boolean;
  /** Write the bag of originals in any case; else only when they do not all fit into the dossier. */
  bag?: boolean;
  /** The reader, by a name in copies.yaml; the carrier's own dossier by default. */
  for?: string;
  /** Largest size of the file, such as `20MB`. */
  maxSize?: string;
  /** Folder with templates of the carrier's own. */
  templates?: string;
}

/** What `build` takes: what to build, and who signs. */
export type BuildInput = BuildOptions & SignedBy;

/** The dossier or assessment that was built and kept. */
export interface BuildReport {
  volume: Volume;
  file: string;
  bytes: number;
  pages: number;
  sha256: string;
  fingerprint: { delivery: string; size: number; root: string };
  signer: { name: string; certificateSha256: string };
  /** The bag of originals beside the dossier. */
  bag?: { file: string; tagManifestSha256: string; payloadBytes: number; payloadFiles: number };
  /** The time confirmed by the server. */
  stampedTime?: string;
  /** How pictures and originals were reduced to keep to the size. */
  sizing: Sizing;
  /** For a redacted copy: its reader, and how much it leaves out. */
  copy?: { name: string; title: string; evidenceLeftOut: number; entriesLeftOut: number };
  notices: string[];
}

import type { CarrierTemplates } from '../../compose/templates.js';
import type { Typesetter } from '../../compose/typesetter.js';
import type { Volume } from '../../core/model/manifest.js';
import type { Instant } from '../../core/model/time.js';
import type { RedactedCopy } from '../redaction/read.js';
import type { Redaction } from '../redaction/redact.js';
import type { OpenedSigner } from '../signing/signer.js';
import type { PendingImages } from './images.js';

/** What one dossier is rendered from, beside the record. */
export interface RenderInput extends PendingImages {
  volume: Volume;
  factsText: string;
  /** Opened while the record is assessed. */
  opened: Promise<OpenedSigner>;
  builtAt: Instant;
  /** Where the dossier will lie. */
  file: string;
  mostBytes: number;
  copy: RedactedCopy | undefined;
  /** What the copy leaves out. */
  out: Redaction;
  templates: CarrierTemplates;
  /** Begun before, so that it has loaded when the pictures are made. */
  typesetter: Typesetter;
}

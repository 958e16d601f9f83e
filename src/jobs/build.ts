import { carrierTemplates } from '../compose/templates.js';
import { Typesetter } from '../compose/typesetter.js';
import { DossierError } from '../core/model/error.js';
import type { Volume } from '../core/model/manifest.js';
import { recordAt } from '../record/record-at.js';
import { withDelivery } from './delivery.js';
import { assessedSize } from './dossier/assessed-size.js';
import type { BuildInput, BuildReport } from './dossier/build-input.js';
import { beginImages } from './dossier/images.js';
import { readSize } from './dossier/size.js';
import { OWN_DOSSIER, type RedactedCopy, readCopy } from './redaction/read.js';
import { NO_REDACTION, redact, redactedState, unredactedState } from './redaction/redact.js';

export type { BuildInput, BuildOptions, BuildReport } from './dossier/build-input.js';

/**
 * Renders, signs, verifies and stores one dossier, or the assessment of the last one; the record notes that it was built.
 * @throws DossierError when the record, the signer, the disk or the typesetting fails; the signal's reason when it
 * is called off, and then neither dossier nor bag is kept and nothing enters the record; for an assessment, bad-usage
 * when there is no dossier of the record as it stands, or when its reader may not have one
 */
export async function build(input: BuildInput): Promise<BuildReport> {
  // A process of its own, which loads while the record is read.
  const typesetter = new Typesetter();
  try {
    return await buildWith(typesetter, input);
  } finally {
    typesetter.stop();
  }
}

function buildWith(typesetter: Typesetter, input: BuildInput): Promise<BuildReport> {
  const loading = import('./dossier/finish.js');
  return withDelivery(input, true, async (record, factsText) => {
    const mostBytes = readSize(input.maxSize);
    const templates = await carrierTemplates(input.templates);
    const volume: Volume = input.assessment === true ? 'assessment' : 'dossier';
    const copy = await readCopy(templates.fileOf('copies.yaml'), input.for ?? OWN_DOSSIER);
    requireFit(input, copy);
    const shown = volume === 'assessment' ? recordAt(record, assessedSize(record.entries)) : record;
    const whole = shown.state();
    const redaction = copy === undefined ? NO_REDACTION : redact(shown.entries, whole, copy);
    const { evidence } = copy === undefined ? unredactedState(whole) : redactedState(whole, redaction, copy);
    // An assessment names exhibits; their pictures are in the dossier.
    const pictured = volume === 'assessment' ? [] : evidence;
    const { finish } = await loading;
    // Pictures use other threads and processes: started first, they are made while the rest is computed.
    const stop = new AbortController();
    const signal = input.signal === undefined ? stop.signal : AbortSignal.any([stop.signal, input.signal]);
    const begun = beginImages(pictured, (hash) => record.readOriginal(hash), mostBytes, signal);
    try {
      const found = {
        volume,
        shown,
        factsText,
        mostBytes,
        copy,
        out: redaction,
        templates,
        typesetter,
        ...begun,
      };
      return await finish(record, found, input);
    } catch (error) {
      stop.abort();
      await begun.images.catch(() => undefined);
      throw error;
    }
  });
}

/** Refuses what can't go together: a bag of a copy or an assessment, and an assessment for the other side. */
function requireFit(
  { bag, assessment }: Pick<BuildInput, 'bag' | 'assessment'>,
  copy: RedactedCopy | undefined,
): void {
  if (bag === true && (copy !== undefined || assessment === true))
    throw new DossierError(
      'bad-usage',
      'a bag holds the whole record and goes with the carrier’s own dossier alone',
      {
        where: { field: '--bag' },
        fix: `Leave out --bag, or ${assessment === true ? '--assessment' : '--for'}.`,
      },
    );
  if (assessment === true && copy?.assessment === false) throw notForThisReader(copy.name);
}

/** The answer to whoever would hand the carrier's own assessment to the other side. */
const notForThisReader = (name: string): DossierError =>
  new DossierError('bad-usage', `the assessment is confidential and not for ${name}`, {
    where: { field: '--assessment' },
    fix: `Build the dossier for this reader: dossier build --for ${name}. The assessment goes to insurer or counsel, or stays with you; in copies.yaml of your own, "assessment: true" names another reader who may have it.`,
  });

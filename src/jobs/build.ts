import { carrierTemplates } from '../compose/templates.js';
import { Typesetter } from '../compose/typesetter.js';
import { DossierError } from '../core/model/error.js';
import { withDelivery } from './delivery.js';
import type { BuildInput, BuildReport } from './dossier/build-input.js';
import { beginImages } from './dossier/images.js';
import { readSize } from './dossier/size.js';
import { OWN_DOSSIER, readCopy } from './redaction/read.js';
import { NO_REDACTION, redact, redactedState, unredactedState } from './redaction/redact.js';

export type { BuildInput, BuildOptions, BuildReport } from './dossier/build-input.js';

/**
 * Renders, signs, verifies and stores one dossier; the record notes that it was built.
 * @throws DossierError when the record, the signer, the disk or the typesetting fails; the signal's reason when it
 * is called off, and then neither dossier nor bag is kept and nothing enters the record
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
    const copy = await readCopy(templates.fileOf('copies.yaml'), input.for ?? OWN_DOSSIER);
    if (copy !== undefined && input.bag === true)
      throw new DossierError('bad-usage', 'a bag holds the whole record, so that no copy has one', {
        where: { field: '--bag' },
        fix: 'Leave out --bag, or --for.',
      });
    const whole = record.state();
    const redaction = copy === undefined ? NO_REDACTION : redact(record.entries, whole, copy);
    const { evidence } = copy === undefined ? unredactedState(whole) : redactedState(whole, redaction, copy);
    const { finish } = await loading;
    // Pictures use other threads and processes: started first, they are made while the rest is computed.
    const stop = new AbortController();
    const signal = input.signal === undefined ? stop.signal : AbortSignal.any([stop.signal, input.signal]);
    const begun = beginImages(evidence, (hash) => record.readOriginal(hash), mostBytes, signal);
    try {
      const found = { factsText, mostBytes, copy, out: redaction, templates, typesetter, ...begun };
      return await finish(record, found, input);
    } catch (error) {
      stop.abort();
      await begun.images.catch(() => undefined);
      throw error;
    }
  });
}

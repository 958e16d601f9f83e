import { createHash } from 'node:crypto';
import { mkdir } from 'node:fs/promises';
import { dirname, resolve } from 'node:path';
import { sha256 } from '../../core/model/evidence.js';
import { omitUndefined } from '../../core/model/omit-undefined.js';
import { type Instant, toInstant } from '../../core/model/time.js';
import { nextStep } from '../../core/ports/work.js';
import { writeDurably } from '../../record/disk/durable.js';
import type { RecordView } from '../../record/record-at.js';
import type { DeliveryRecord } from '../../record/store.js';
import type { PendingBag } from '../bag.js';
import { portsWith } from '../delivery.js';
import { beginSigner } from '../signing/signer.js';
import { placeToWrite } from '../typed/place-to-write.js';
import type { BuildInput, BuildReport } from './build-input.js';
import { render } from './render.js';
import type { RenderInput } from './render-input.js';

/** What was read and started before; the rest of the render input is decided here. */
export interface PendingDossier extends Omit<RenderInput, 'opened' | 'builtAt' | 'file'> {
  /** The record as it is shown: all of it, or what the last dossier shows. */
  shown: RecordView;
}

/** Renders, signs, verifies and stores the dossier, and notes it in the record. Throws as `build` does. */
export async function finish(
  record: DeliveryRecord,
  begun: PendingDossier,
  input: BuildInput,
): Promise<BuildReport> {
  const carrier = record.state().delivery.parties.carrier?.name;
  const { opened, typed } = beginSigner(input, carrier ?? input.by, input.now);
  await typed;
  // Only now: a person may take minutes to enter the passphrase, and no certificate signs before it was made.
  const builtAt = toInstant(input.now().getTime());
  const file =
    input.out === undefined
      ? resolve(input.folder, `${begun.volume}s`, fileName(record.head.delivery, builtAt, begun))
      : await placeToWrite(input.out, input.folder, '--out');
  await mkdir(dirname(file), { recursive: true });
  const made = await renderAndKeep(begun.shown, { ...begun, opened, builtAt, file }, input);
  const digest = sha256.parse(createHash('sha256').update(made.pdf).digest('hex'));
  const { size, root } = made.fingerprint;
  await record.append([
    {
      type: 'dossier-built',
      by: input.by,
      body: {
        file: file.slice(dirname(file).length + 1),
        sha256: digest,
        bytes: made.pdf.length,
        size,
        root,
        ...omitUndefined({
          for: begun.copy?.name,
          volume: begun.volume === 'assessment' ? ('assessment' as const) : undefined,
        }),
      },
    },
  ]);
  return {
    volume: begun.volume,
    file,
    bytes: made.pdf.length,
    pages: made.pages,
    sha256: digest,
    fingerprint: made.fingerprint,
    signer: made.signer,
    ...omitUndefined({ bag: made.bag, stampedTime: made.stampedTime }),
    sizing: made.sizing,
    ...omitUndefined({ copy: made.copy }),
    notices: [
      ...made.opened.notices,
      ...record.notices.map((notice) => notice.message),
      ...made.warnings,
      ...made.said,
    ],
  };
}

/**
 * Dossier and bag are both stored in the end, or neither. Until both are whole and verified they have temporary
 * names, so that earlier ones under the same names stay.
 */
async function renderAndKeep(record: RecordView, wanted: RenderInput, input: BuildInput) {
  const under: { way?: PendingBag } = {};
  const stop = () => wanted.typesetter.stop();
  input.signal?.addEventListener('abort', stop, { once: true });
  try {
    const made = await render(record, wanted, input, (begun) => {
      under.way = begun;
    });
    nextStep(input, { what: 'checking what was built' });
    const { requireSound } = await import('./require-sound.js');
    await requireSound(made.pdf, made.opened.signer, record.folder);
    if (under.way !== undefined) nextStep(input, { what: 'packing the originals' });
    const packed = await under.way?.done;
    // From here on the dossier is stored, and the short rest is not cancelled.
    input.signal?.throwIfAborted();
    await writeDurably(portsWith(input.now), wanted.file, made.pdf, async () => packed?.place());
    return { ...made, bag: under.way?.bag };
  } catch (error) {
    stop();
    // Only when its writing has ended is it known that nothing of it comes after.
    const packed = await under.way?.done.catch(() => undefined);
    await packed?.discard().catch(() => undefined);
    // A failure caused by cancelling is reported with the signal's reason.
    input.signal?.throwIfAborted();
    throw error;
  } finally {
    input.signal?.removeEventListener('abort', stop);
  }
}

/** `2026-0714-A-20260725T101500Z.pdf`: the delivery and the time, in characters that every disk accepts. */
function fileName(
  delivery: string,
  builtAt: Instant,
  { copy, volume }: Pick<PendingDossier, 'copy' | 'volume'>,
): string {
  const safe = delivery.replace(/[^\p{L}\p{N}._-]+/gu, '-');
  const what = volume === 'assessment' ? 'assessment-' : '';
  const who = copy === undefined ? '' : `for-${copy.name}-`;
  return `${safe}-${what}${who}${builtAt.replace(/[-:]|\.\d{3}/g, '')}.pdf`;
}

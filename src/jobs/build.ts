import { createHash, randomBytes } from 'node:crypto';
import { mkdir, rm } from 'node:fs/promises';
import { dirname, join, resolve } from 'node:path';
import { composeDossier } from '../compose/compose.js';
import { numberExhibits } from '../compose/exhibits.js';
import { paper as paperSchema } from '../model/delivery.js';
import { DossierError } from '../model/error.js';
import { type Sha256, sha256 } from '../model/evidence.js';
import { type BagOfOriginals, type LeftOut, MANIFEST_NAME } from '../model/manifest.js';
import type { RecordState } from '../model/state.js';
import { type Instant, toInstant } from '../model/time.js';
import { writeDurably } from '../record/disk/durable.js';
import { entryBytes, printRow } from '../record/ledger.js';
import type { DeliveryRecord } from '../record/store.js';
import type { Identity } from '../seal/identity.js';
import { buildManifest } from '../seal/manifest.js';
import { signPdf } from '../seal/sign-pdf.js';
import { verifyDossier } from '../verify/verify-dossier.js';
import { assessRecord } from './assess.js';
import { enclosures, ORIGINALS_BUDGET } from './attachments.js';
import { type WrittenBag, writeBagOf } from './bag.js';
import { type OpenDelivery, portsWith, withDelivery } from './delivery.js';
import { openIdentity } from './identity.js';
import { tool } from './tool.js';

export interface BuildInput extends OpenDelivery {
  /** File to write; the delivery's own dossiers folder when left out. */
  out: string | undefined;
  paper: string | undefined;
  identityFolder: string | undefined;
  passphrase: (isNew: boolean) => Promise<string>;
  progress: (text: string) => void;
  /** Address of a time-stamp server (RFC 3161) that confirms the signature, and the policy asked of it. */
  tsa?: string;
  tsaPolicy?: string;
  /** Write the bag of originals in any case; else only when they do not all fit into the dossier. */
  bag?: boolean;
}

export interface BuildReport {
  file: string;
  bytes: number;
  pages: number;
  sha256: string;
  fingerprint: { delivery: string; size: number; root: string };
  signer: { name: string; certificateSha256: string };
  /** The bag of originals beside the dossier. */
  bag?: { file: string; tagManifestSha256: string; payloadBytes: number; payloadFiles: number };
  /** The time that the server confirms. */
  stampedTime?: string;
  notices: string[];
}

/**
 * Renders, seals, checks and keeps one dossier; the record notes that it was built.
 * Throws DossierError when the record, the identity, the disk or the typesetting fails.
 */
export async function build(input: BuildInput): Promise<BuildReport> {
  return withDelivery(input, true, async (record, factsText) => {
    const builtAt = toInstant(input.now().getTime());
    const { identity, notices } = await openIdentity({
      folder: input.identityFolder,
      name: record.state().delivery.parties.carrier?.name ?? input.by,
      now: input.now,
      passphrase: input.passphrase,
    });
    const file = resolve(
      input.out ?? join(input.folder, 'dossiers', fileName(record.head.delivery, builtAt)),
    );
    await mkdir(dirname(file), { recursive: true });
    const made = await renderAndKeep(record, { factsText, identity, builtAt, file }, input);
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
        },
      },
    ]);
    return {
      file,
      bytes: made.pdf.length,
      pages: made.pages,
      sha256: digest,
      fingerprint: made.fingerprint,
      signer: made.signer,
      ...(made.bag === undefined ? {} : { bag: made.bag }),
      ...(made.stampedTime === undefined ? {} : { stampedTime: made.stampedTime }),
      notices: [
        ...notices,
        ...record.notices.map((notice) => notice.message),
        ...made.warnings,
        ...made.leftOut.map(leftOutInWords),
      ],
    };
  });
}

/** Dossier and bag are both there in the end, or neither. */
async function renderAndKeep(record: DeliveryRecord, wanted: ToRender, input: BuildInput) {
  let bag: WrittenBag | undefined;
  try {
    const made = await render(record, wanted, input, (written) => {
      bag = written;
    });
    input.progress('checking what was built');
    await requireSound(made.pdf, wanted.identity, record.folder);
    await writeDurably(portsWith(input.now), wanted.file, made.pdf);
    return { ...made, bag };
  } catch (error) {
    if (bag !== undefined) await rm(bag.file, { force: true });
    throw error;
  }
}

/** A dossier that a stranger would refuse is never kept. */
async function requireSound(pdf: Uint8Array, identity: Identity, folder: string): Promise<void> {
  const { verdict, checks } = await verifyDossier(pdf, { trusted: [identity.certificateDer] });
  if (verdict === 'intact') return;
  const failed = checks.filter(({ result }) => result === 'failed');
  if (failed.length > 0 && failed.every(({ id }) => id.startsWith('ledger.')))
    throw new DossierError(
      'record-damaged',
      `the record contradicts itself: ${failed.map(({ detail }) => detail).join('; ')}`,
      { where: { file: folder }, fix: 'Put the folder back from a copy; no dossier was kept.' },
    );
  throw new Error(`the dossier just built does not verify: ${JSON.stringify(failed)}`);
}

interface ToRender {
  factsText: string;
  identity: Identity;
  builtAt: Instant;
  /** Where the dossier will lie. */
  file: string;
}

async function render(
  record: DeliveryRecord,
  { factsText, identity, builtAt, file }: ToRender,
  input: BuildInput,
  onBag: (bag: WrittenBag) => void,
) {
  input.progress('computing what the record shows');
  const assessed = await assessRecord(record, builtAt);
  const { assessment, logs, ruleSet } = assessed;
  const state = onPaper(assessed.state, input.paper);
  const entries = record.entries.map(entryBytes);
  const ledger = Buffer.concat(entries.map(printRow));
  const { enclosed, leftOut, exhibits } = await enclosures(
    record,
    assessed,
    { ledger, facts: factsText },
    numberExhibits(state),
  );
  const fingerprint = record.head;
  let bag: BagOfOriginals | undefined;
  if (input.bag === true || leftOut.some(({ why }) => why === 'size-budget')) {
    input.progress('packing the originals');
    const written = await writeBagOf(record, { dossier: file, ledger, facts: factsText, builtAt });
    onBag(written);
    const { file: _, ...said } = written;
    bag = said;
  }
  const { bytes: manifestBytes } = buildManifest({
    delivery: state.delivery.delivery,
    builtAt,
    tool: tool(),
    entries,
    ruleSet: {
      name: ruleSet.ruleSet.ruleSet,
      version: ruleSet.ruleSet.version,
      bytes: Buffer.from(ruleSet.text, 'utf8'),
    },
    exhibits,
    attachments: enclosed,
    leftOut,
    ...(bag === undefined ? {} : { bag }),
  });
  const signer = { name: identity.subject, certificateSha256: identity.certificateSha256 };
  input.progress('setting the pages');
  const { pdf, warnings, pages } = await composeDossier({
    state,
    assessment,
    logs,
    exhibits,
    attachments: [
      {
        name: MANIFEST_NAME,
        bytes: manifestBytes,
        type: 'application/json',
        description: 'Hashes of all exhibits, attachments and ledger entries',
        relationship: 'data',
      },
      ...enclosed.map(({ name, bytes, type, what, description }) => ({
        name,
        bytes,
        type,
        description,
        relationship: what === 'original' ? ('source' as const) : ('data' as const),
      })),
    ],
    readOriginal: async (hash: Sha256) => record.readOriginal(hash),
    builtAt,
    fingerprint,
    signer,
    tool: tool(),
  });
  input.progress('signing');
  const { tsa, tsaPolicy, now } = input;
  let stampedTime: string | undefined;
  const stamp = async (value: Uint8Array): Promise<Uint8Array> => {
    const { obtainTimeStamp } = await import('./time-stamp.js');
    const policy = tsaPolicy === undefined ? {} : { policy: tsaPolicy };
    const { token, at } = await obtainTimeStamp({ url: tsa ?? '', now, ...policy }, value);
    stampedTime = at.toISOString();
    return token;
  };
  const signed = await signPdf(pdf, identity, {
    at: builtAt,
    reason: `Dossier of delivery ${fingerprint.delivery}`,
    random: (count) => randomBytes(count),
    ...(tsa === undefined ? {} : { stamp }),
  });
  return {
    pdf: signed,
    pages,
    warnings,
    leftOut,
    fingerprint,
    signer,
    ...(stampedTime === undefined ? {} : { stampedTime }),
  };
}

function leftOutInWords({ name, why }: LeftOut): string {
  const reason = {
    'empty-file': 'it is empty',
    'size-budget': `the originals inside may be ${ORIGINALS_BUDGET / 1e6} MB together`,
    withheld: 'it is withheld',
  }[why];
  return `The original of ${name} is not inside, only its hash: ${reason}.`;
}

function onPaper(state: RecordState, wanted: string | undefined): RecordState {
  if (wanted === undefined) return state;
  const read = paperSchema.safeParse(wanted);
  if (!read.success)
    throw new DossierError('bad-usage', `there is no paper "${wanted}"`, {
      where: { field: '--paper' },
      fix: 'Use Letter or A4.',
    });
  return {
    ...state,
    delivery: { ...state.delivery, show: { ...state.delivery.show, paper: read.data } },
  };
}

/** `2026-0714-A-20260725T101500Z.pdf`: the delivery and the moment, in characters that every disk takes. */
function fileName(delivery: string, builtAt: Instant): string {
  const safe = delivery.replace(/[^\p{L}\p{N}._-]+/gu, '-');
  return `${safe}-${builtAt.replace(/[-:]|\.\d{3}/g, '')}.pdf`;
}

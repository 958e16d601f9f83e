import { createHash, randomBytes } from 'node:crypto';
import { mkdir } from 'node:fs/promises';
import { dirname, join, resolve } from 'node:path';
import { composeDossier } from '../compose/compose.js';
import { numberExhibits } from '../compose/exhibits.js';
import { paper as paperSchema } from '../model/delivery.js';
import { DossierError } from '../model/error.js';
import { type Sha256, sha256 } from '../model/evidence.js';
import { type LeftOut, MANIFEST_NAME } from '../model/manifest.js';
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
}

export interface BuildReport {
  file: string;
  bytes: number;
  pages: number;
  sha256: string;
  fingerprint: { delivery: string; size: number; root: string };
  signer: { name: string; certificateSha256: string };
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
    const made = await render(record, factsText, identity, builtAt, input);
    input.progress('checking what was built');
    const { verdict, checks } = await verifyDossier(made.pdf, { trusted: [identity.certificateDer] });
    if (verdict !== 'intact')
      throw new Error(
        `the dossier just built does not verify: ${JSON.stringify(checks.filter(({ result }) => result === 'failed'))}`,
      );
    const file = resolve(
      input.out ?? join(input.folder, 'dossiers', fileName(record.head.delivery, builtAt)),
    );
    const digest = sha256.parse(createHash('sha256').update(made.pdf).digest('hex'));
    await mkdir(dirname(file), { recursive: true });
    await writeDurably(portsWith(input.now), file, made.pdf);
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
      notices: [
        ...notices,
        ...record.notices.map((notice) => notice.message),
        ...made.warnings,
        ...made.leftOut.map(leftOutInWords),
      ],
    };
  });
}

async function render(
  record: DeliveryRecord,
  factsText: string,
  identity: Identity,
  builtAt: Instant,
  input: BuildInput,
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
  const signed = await signPdf(pdf, identity, {
    at: builtAt,
    reason: `Dossier of delivery ${fingerprint.delivery}`,
    random: (count) => randomBytes(count),
  });
  return { pdf: signed, pages, warnings, leftOut, fingerprint, signer };
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

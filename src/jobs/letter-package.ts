import { setPages } from '../compose/letters/compose.js';
import { letterView } from '../compose/letters/view.js';
import { ownTemplates } from '../compose/templates.js';
import type { ClaimId, LetterKind } from '../core/model/claim.js';
import { omitUndefined } from '../core/model/omit-undefined.js';
import { toInstant } from '../core/model/time.js';
import { type LongWork, nextStep } from '../core/ports/work.js';
import type { DeliveryRecord } from '../record/store.js';
import type { BuildReport } from './build.js';
import { type OpenDelivery, portsWith, withDelivery } from './delivery.js';
import { readAsked, type TypedLetter } from './letter-package/asked.js';
import { builtFiles, dossierFor, enclosed, requireUnchanged } from './letter-package/dossier.js';
import { enclosuresText, type PackedFile, type Staging, stage } from './letter-package/files.js';
import { type Packing, writeCertificates, writeFrom } from './letter-package/papers.js';
import { type Told, toldBeside } from './letter-package/tell.js';
import type { SignedBy } from './signer.js';

/** What is put together, and how. */
export interface PackOptions extends OpenDelivery, LongWork, TypedLetter {
  /** Folder to write, new or empty. */
  out: string;
  /** Whose copy of the dossier goes with it, by its name in copies.yaml; by the kind of letter when left out. */
  for?: string;
  /** Whether the dossier goes with it; by the kind of letter when left out. */
  dossier?: boolean;
  /** Draft a certificate of records for a qualified person to complete. */
  certificate?: boolean;
  templates?: string;
  maxSize?: string;
}

/** Who signs matters where a dossier goes with it. */
export type PackInput = PackOptions & SignedBy;

export interface PackReport extends Told {
  folder: string;
  letter: LetterKind;
  claim?: ClaimId;
  /** Left out when it must be filled in. */
  to?: string;
  files: PackedFile[];
  /** Places in the letter that a person fills in before it is signed. */
  toFillIn: string[];
  certificateToFillIn?: string[];
  /** Entry of the record that notes it. Nothing was sent. */
  entry: number;
  notices: string[];
}

/** What the record says where the name is a place to fill in. */
const NOT_NAMED = '(not named)';

/** Federal Rules of Evidence 902(11) and (13), (14): what else they ask is from memory. */
const OF_CERTIFICATE =
  'The certificate is a draft: a qualified person checks every line, and the other side needs written notice of it in good time before the trial (from memory: Federal Rules of Evidence 902(11)). Have a lawyer compare it with the rules in force.';

/**
 * Puts an answer together: letter, dossier and what else goes with it, in one folder that is there whole or not at all;
 * then the record notes the files by their hashes. Nothing is sent.
 * Throws DossierError for what was asked, for templates, and whatever building the dossier says.
 */
export async function pack(input: PackInput): Promise<PackReport> {
  const templates = await ownTemplates(input.templates);
  const madeAt = toInstant(input.now().getTime());
  const staging = await stage(input.out, input.folder, portsWith(input.now));
  try {
    const packing = await withDelivery(input, false, async (record): Promise<Packing> => {
      const asked = readAsked(input, record.state());
      const copy = input.for ?? asked.manner.copy;
      const made = { asked, copy, madeAt, templates, templatesFolder: input.templates };
      // What is wrong with words and templates shows before the dossier is built.
      await writeFrom(record, made, [], record.head);
      return made;
    });
    const built = await dossierFor(input, packing, staging);
    return await withDelivery(input, true, (record) => finish(record, input, packing, built, staging));
  } catch (error) {
    await staging.remove();
    throw error;
  }
}

async function finish(
  record: DeliveryRecord,
  input: PackInput,
  packing: Packing,
  built: BuildReport | undefined,
  staging: Staging,
): Promise<PackReport> {
  requireUnchanged(record, built);
  const { asked } = packing;
  const head = built?.fingerprint ?? record.head;
  const dossier = await builtFiles(built);
  const { reader, letter, paper } = await writeFrom(record, packing, dossier.map(enclosed), head);
  // A letter does not name the draft: what is sent in the end is the completed certificate, another file.
  const certified =
    input.certificate === true ? await writeCertificates(record, paper, asked.language, staging) : undefined;
  nextStep(input, { what: 'setting the letter' });
  const set = await setPages(letter.document, paper);
  const files: PackedFile[] = [
    await staging.write('letter.pdf', 'letter', set.pdf),
    await staging.write('letter.txt', 'letter-text', Buffer.from(letter.text, 'utf8')),
    ...dossier,
    ...(certified?.files ?? []),
  ];
  const { labels } = await letterView(paper);
  const list = Buffer.from(enclosuresText(files, labels), 'utf8');
  files.push(await staging.write('enclosures.txt', 'enclosures', list));
  const told = await toldBeside(asked, reader, { ...paper, ...reader.whole });
  const ofClaim = omitUndefined({ claim: asked.claim });
  await staging.finish();
  const [entry] = await record.append([
    {
      type: 'claim-noted',
      by: input.by,
      body: { is: 'answered', ...ofClaim, letter: asked.kind, to: asked.to?.name ?? NOT_NAMED, files },
    },
  ]);
  return {
    folder: input.out,
    letter: asked.kind,
    ...ofClaim,
    ...omitUndefined({ to: asked.to?.name }),
    files,
    toFillIn: letter.blanks,
    ...omitUndefined({ certificateToFillIn: certified?.draft.blanks }),
    ...told,
    cautions: [...told.cautions, ...(certified === undefined ? [] : [OF_CERTIFICATE])],
    entry: entry?.seq ?? record.head.size - 1,
    notices: [
      ...(built?.notices ?? []),
      ...record.notices.map(({ message }) => message),
      ...set.warnings,
      ...languageNotice(record, packing, built),
    ],
  };
}

function languageNotice(
  record: DeliveryRecord,
  { asked }: Packing,
  built: BuildReport | undefined,
): string[] {
  const { language } = record.state().delivery.show;
  return built === undefined || language === asked.language
    ? []
    : [
        `The dossier is in the language of delivery.yaml (show.language: ${language}), the letter in ${asked.language}.`,
      ];
}

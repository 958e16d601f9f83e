import { typesetLetter } from '../compose/letters/compose.js';
import { letterView } from '../compose/letters/view.js';
import { carrierTemplates } from '../compose/templates.js';
import { omitUndefined } from '../core/model/omit-undefined.js';
import { toInstant } from '../core/model/time.js';
import { nextStep } from '../core/ports/work.js';
import type { DeliveryRecord } from '../record/store.js';
import type { BuildReport } from './build.js';
import { portsWith, withDelivery } from './delivery.js';
import { requireOwnSide } from './letter-package/assessment-reader.js';
import { type PackageContext, writeCertificates, writeFrom } from './letter-package/documents.js';
import {
  assessmentFor,
  builtFiles,
  dossierFor,
  enclosed,
  requireUnchanged,
} from './letter-package/dossier.js';
import { enclosuresText, type PackedFile, type Staging, stageFolder } from './letter-package/files.js';
import { readLetterRequest } from './letter-package/letter-request.js';
import type { LetterPackageInput, LetterPackageReport } from './letter-package/package-input.js';
import { senderNotes } from './letter-package/sender-notes.js';
import { readCopy } from './redaction/read.js';

export type { LetterPackageInput, LetterPackageReport, PackOptions } from './letter-package/package-input.js';

/** Recorded in place of a name that is to be filled in. */
const NOT_NAMED = '(not named)';

/** Federal Rules of Evidence 803(6), 803(7), 902(11) and 1006; Palmer v. Hoffman, 318 U.S. 109 (1943). */
const OF_CERTIFICATE =
  'The certificate is a draft: a qualified person checks every line. Before the trial or hearing the other side needs reasonable written notice, and the records and the certificate must be available for inspection (Federal Rules of Evidence 902(11)); so must the originals behind charts and sums (1006). Accounts written after a dispute began are no routine records (318 U.S. 109): name them as exceptions. What regular records lack can be used as evidence too, by either side (803(7)). Have a lawyer compare it with the rules in force.';

/**
 * Writes a letter package: letter, dossier and enclosures, in one folder that exists whole or not at all; then the
 * record notes the files by their hashes. Nothing is sent. Throws DossierError for the request, for templates, and
 * whatever building the dossier throws.
 */
export async function writeLetterPackage(input: LetterPackageInput): Promise<LetterPackageReport> {
  const templates = await carrierTemplates(input.templates);
  const madeAt = toInstant(input.now().getTime());
  const staging = await stageFolder(input.out, input.folder, portsWith(input.now));
  try {
    const packing = await withDelivery(input, false, async (record): Promise<PackageContext> => {
      const request = readLetterRequest(input, record.state());
      const copy = input.for ?? request.manner.copy;
      if (input.assessment === true)
        requireOwnSide(request, await readCopy(templates.fileOf('copies.yaml'), copy), record.state());
      const made = { request, copy, madeAt, templates, templatesFolder: input.templates };
      // Errors in words and templates show before the dossier is built.
      await writeFrom(record, made, [], record.head);
      return made;
    });
    const built = await dossierFor(input, packing, staging);
    const weighed = await assessmentFor(input, packing, staging, built);
    return await withDelivery(input, true, (record) =>
      finish(record, input, packing, { dossier: built, assessment: weighed }, staging),
    );
  } catch (error) {
    await staging.remove();
    throw error;
  }
}

/** The PDFs that go with a letter. */
interface BuiltVolumes {
  dossier: BuildReport | undefined;
  assessment: BuildReport | undefined;
}

async function finish(
  record: DeliveryRecord,
  input: LetterPackageInput,
  packing: PackageContext,
  { dossier: built, assessment }: BuiltVolumes,
  staging: Staging,
): Promise<LetterPackageReport> {
  requireUnchanged(record, [built, assessment]);
  const { request } = packing;
  const head = built?.fingerprint ?? record.head;
  const dossier = [...(await builtFiles(built)), ...(await builtFiles(assessment))];
  const { reader, letter, paper } = await writeFrom(record, packing, dossier.map(enclosed), head);
  // A letter does not list the draft: the completed certificate, another file, is what is sent.
  const certified =
    input.certificate === true
      ? await writeCertificates(record, paper, request.language, staging)
      : undefined;
  nextStep(input, { what: 'setting the letter' });
  const set = await typesetLetter(letter.document, paper);
  const files: PackedFile[] = [
    await staging.write('letter.pdf', 'letter', set.pdf),
    await staging.write('letter.txt', 'letter-text', Buffer.from(letter.text, 'utf8')),
    ...dossier,
    ...(certified?.files ?? []),
  ];
  const { labels } = await letterView(paper);
  const list = Buffer.from(enclosuresText(files, labels), 'utf8');
  files.push(await staging.write('enclosures.txt', 'enclosures', list));
  const told = await senderNotes(request, reader, { ...paper, ...reader.whole });
  const ofClaim = omitUndefined({ claim: request.claim });
  await staging.finish();
  const [entry] = await record.append([
    {
      type: 'claim-noted',
      by: input.by,
      body: { is: 'answered', ...ofClaim, letter: request.kind, to: request.to?.name ?? NOT_NAMED, files },
    },
  ]);
  return {
    folder: input.out,
    letter: request.kind,
    ...ofClaim,
    ...omitUndefined({ to: request.to?.name }),
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
  { request }: PackageContext,
  built: BuildReport | undefined,
): string[] {
  const { language } = record.state().delivery.show;
  return built === undefined || language === request.language
    ? []
    : [
        `The dossier is in the language of delivery.yaml (show.language: ${language}), the letter in ${request.language}.`,
      ];
}

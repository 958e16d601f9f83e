import { draftCertificate } from '../../compose/letters/certificate.js';
import { type Letter, typesetLetter, writeLetter } from '../../compose/letters/compose.js';
import type { CorrespondenceInput, EnclosedFile, LetterInput } from '../../compose/letters/input.js';
import type { CarrierTemplates } from '../../compose/templates.js';
import { entryBytes } from '../../core/ledger/ledger.js';
import { leafHash } from '../../core/ledger/tree.js';
import type { Day } from '../../core/model/claim.js';
import type { Language } from '../../core/model/delivery.js';
import { omitUndefined } from '../../core/model/omit-undefined.js';
import { calendarDay, type Instant, type Zone } from '../../core/model/time.js';
import { inZone } from '../../core/model/zoned-time.js';
import type { DeliveryRecord } from '../../record/store.js';
import { readCopy } from '../redaction/read.js';
import { tool } from '../tool.js';
import type { PackedFile, Staging } from './files.js';
import type { LetterRequest } from './letter-request.js';
import { type LetterReader, readerOf } from './reader.js';

/** Context of one letter package. */
export interface PackageContext {
  request: LetterRequest;
  /** Name of the reader's copy in copies.yaml. */
  copy: string;
  madeAt: Instant;
  templates: CarrierTemplates;
  /** The carrier's own folder of templates, as given. */
  templatesFolder: string | undefined;
}

export interface WrittenLetterOf {
  reader: LetterReader;
  letter: Letter;
  /** What the letter was written from. */
  paper: CorrespondenceInput;
}

/** Writes the letter from the record as its reader sees it. */
export async function writeFrom(
  record: DeliveryRecord,
  { request, copy, madeAt, templates, templatesFolder }: PackageContext,
  enclosed: readonly EnclosedFile[],
  fingerprint: CorrespondenceInput['fingerprint'],
): Promise<WrittenLetterOf> {
  const chosen = await readCopy(templates.fileOf('copies.yaml'), copy);
  const reader = await readerOf(record, chosen, request.claim, madeAt, templatesFolder);
  const { language, paper: size } = request;
  const paper: CorrespondenceInput = {
    ...reader.seen,
    fingerprint,
    language,
    paper: size,
    madeAt,
    enclosed,
    templates,
  };
  const { claim: _, ...rest } = request;
  const letter: LetterInput = {
    ...paper,
    ...rest,
    day: dayOf(reader, madeAt),
    ...omitUndefined({ claim: reader.claim }),
  };
  return { reader, letter: await writeLetter(letter), paper };
}

/** Today in the zone of the claim's deadlines, else at the last unloading stop. */
function dayOf({ claim, whole }: LetterReader, at: Instant): Day {
  const received = claim?.entries.findLast((entry) => entry.is === 'received');
  const last = whole.state.delivery.stops.findLast(({ does }) => does === 'unload')?.zone;
  const zone = received?.is === 'received' ? received.received.zone : (last ?? ('UTC' as Zone));
  return { date: calendarDay.parse(inZone(at, zone).toFormat('yyyy-MM-dd')), zone };
}

/**
 * Drafts the certificate of records. The English form is the one to sign, since 28 U.S.C. 1746 gives its words; for
 * another language there is a translation to read beside it.
 */
export async function writeCertificates(
  record: DeliveryRecord,
  paper: CorrespondenceInput,
  language: Language,
  staging: Staging,
): Promise<{ draft: Letter; files: PackedFile[] }> {
  const entryHash = (seq: number) => {
    const entry = record.entries[seq];
    return entry === undefined ? undefined : leafHash(entryBytes(entry));
  };
  const draftIn = (wanted: Language) =>
    draftCertificate({ ...paper, language: wanted, tool: tool(), entryHash });
  const write = async (name: string, { document }: Letter) =>
    staging.write(name, 'certificate', (await typesetLetter(document, paper)).pdf);
  const draft = await draftIn('en');
  const files = [await write('certificate.pdf', draft)];
  if (language !== 'en') files.push(await write(`certificate-${language}.pdf`, await draftIn(language)));
  return { draft, files };
}

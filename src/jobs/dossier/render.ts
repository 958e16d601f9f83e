import { prepareDossier, setDossier } from '../../compose/compose.js';
import { listExhibitImages, type PreparedImages } from '../../compose/exhibit-images.js';
import type { RedactionSummary } from '../../compose/input.js';
import { withRuleWords } from '../../compose/rule-words.js';
import type { Attachment } from '../../compose/typeset.js';
import { MANIFEST_NAME, type OmittedOriginal, type OriginalsBag } from '../../core/model/manifest.js';
import { omitUndefined } from '../../core/model/omit-undefined.js';
import { nextStep } from '../../core/ports/work.js';
import { numbersFor } from '../../core/words/numbers.js';
import type { RecordView } from '../../record/record-at.js';
import { buildManifest, type ManifestParts } from '../../signing/manifest.js';
import { beginBag, type PendingBag } from '../bag.js';
import { type RedactedCopy, titleIn } from '../redaction/read.js';
import { tool } from '../tool.js';
import { type AssessedForReader, assessForReader } from './assess-for-reader.js';
import {
  type EnclosedFile,
  type EnclosedOriginals,
  encloseOriginals,
  originalsBytes,
  recordFiles,
} from './attachments.js';
import type { BuildInput } from './build-input.js';
import { type ExhibitParts, exhibitParts } from './exhibit-parts.js';
import { formatOmittedOriginals } from './omitted-originals.js';
import type { RenderInput } from './render-input.js';
import type { Sizing } from './size.js';

/** Fonts, drawings and signature, and what each exhibit adds to pages and tags, in bytes: measured, rounded up. */
const PAGES_BYTES = 1_000_000;
const EXHIBIT_BYTES = 4_000;

/** Computes, typesets and signs one dossier; its bag, when there is one, is started and reported. */
export async function render(
  record: RecordView,
  wanted: RenderInput,
  input: BuildInput,
  onBag: (begun: PendingBag) => void,
) {
  nextStep(input, { what: 'computing what the record shows' });
  const told = await assessForReader(record, wanted, input.paper);
  const parts = await exhibitParts(record, told.assessed.state, wanted);
  const opened = await wanted.opened;
  nextStep(input, { what: 'preparing the pictures' });
  const { images, files, bag } = await collectContents(record, wanted, input, told, parts, onBag);
  const sizing: Sizing = {
    mostBytes: wanted.mostBytes,
    picture: images.quality,
    originalsInside: files.originals.enclosed.length,
    originalsNotInside: files.leftOut.length,
  };
  const signer = { name: opened.subject, certificateSha256: opened.certificateSha256 };
  const copy = summaryOf(wanted, told);
  nextStep(input, { what: 'setting the pages' });
  const { job, warnings } = await prepareDossier({
    state: told.assessed.state,
    assessment: withRuleWords(told.assessed.assessment, told.ruleWords),
    logs: told.assessed.logs,
    overlaps: told.assessed.overlaps,
    exhibits: files.originals.exhibits,
    attachments: attachmentsOf(wanted, told, parts, files, images, {
      ...omitUndefined({ bag }),
      timeStamp: input.timeStamps === undefined ? 'none' : 'inside',
    }),
    readOriginal: (hash) => record.readOriginal(hash),
    builtAt: wanted.builtAt,
    fingerprint: record.head,
    signer,
    tool: tool(),
    plates: images,
    volume: wanted.volume,
    ...omitUndefined({ copy, sizing: wanted.volume === 'assessment' ? undefined : sizing }),
    templates: wanted.templates,
    words: told.words,
  });
  // The modules needed afterwards load while another process typesets the pages.
  const [{ pdf, pages, signature }, { signDossier }] = await Promise.all([
    setDossier(job, wanted.typesetter),
    import('./sign.js'),
    import('./require-sound.js'),
  ]);
  nextStep(input, { what: 'signing' });
  const signed = await signDossier(
    pdf,
    { ...wanted, signer: opened.signer },
    signature,
    record.head.delivery,
    input,
  );
  return {
    ...signed,
    opened,
    pages,
    warnings,
    said: [
      ...largerThanWanted(signed.pdf.length, wanted.mostBytes),
      ...(wanted.volume === 'assessment'
        ? []
        : formatOmittedOriginals(files.originals.leftOut, wanted.mostBytes)),
    ],
    sizing,
    ...omitUndefined({ copy: englishTitle(copy, wanted.copy) }),
    fingerprint: record.head,
    signer,
  };
}

/** The files that go inside. */
interface Files {
  /** Ledger, facts, rule set, computed tables. */
  own: EnclosedFile[];
  originals: EnclosedOriginals;
  /** Every original that is not attached. */
  leftOut: OmittedOriginal[];
}

/** Exhibit images, and as many originals as fit beside images, tables and pages. */
async function collectContents(
  record: RecordView,
  { volume, factsText, builtAt, file, mostBytes, copy, nearlyMade, images: making }: RenderInput,
  input: BuildInput,
  { assessed, words: { labels } }: AssessedForReader,
  { ledger, numbered, not, unnamed }: ExhibitParts,
  onBag: (begun: PendingBag) => void,
): Promise<{ images: PreparedImages; files: Files; bag: OriginalsBag | undefined }> {
  const recorded = { ledger: ledger.bytes, facts: factsText };
  const pack = async (): Promise<OriginalsBag> => {
    const begun = await beginBag(record, { dossier: file, ...recorded, builtAt, signal: input.signal });
    onBag(begun);
    const { file: _, ...bag } = begun.bag;
    return bag;
  };
  const own = recordFiles(assessed, recorded, numbered, labels, volume);
  // Where originals are left out however small the pictures are, the bag is started with the last of these: it
  // keeps one core busy while pictures and typesetting keep the other.
  await nearlyMade;
  const surely = input.bag === true || originalsBytes(numbered, not) > mostBytes;
  const mayPack = copy === undefined && volume === 'dossier';
  const early = mayPack && surely ? await pack() : undefined;
  const images = await making;
  const ownBytes = own.reduce((sum, { bytes }) => sum + bytes.length, 0);
  const room = mostBytes - images.bytes - ownBytes - PAGES_BYTES - EXHIBIT_BYTES * numbered.length;
  const originals = await encloseOriginals(record, numbered, { originals: Math.max(0, room), not }, labels);
  const tooMuch = mayPack && originals.leftOut.some(({ why }) => why === 'size-budget');
  const bag = early ?? (tooMuch ? await pack() : undefined);
  return { images, files: { own, originals, leftOut: [...originals.leftOut, ...unnamed] }, bag };
}

/** The manifest, and everything that it lists. */
function attachmentsOf(
  { volume, builtAt, out }: RenderInput,
  { assessed: { state, ruleSet }, words: { labels } }: AssessedForReader,
  { entries, ledger }: ExhibitParts,
  { own, originals, leftOut }: Files,
  images: PreparedImages,
  seal: Pick<ManifestParts, 'bag' | 'timeStamp'>,
): Attachment[] {
  const exhibits = originals.exhibits.filter(({ seq }) => !out.entries.has(seq));
  const enclosed = [...own, ...originals.enclosed];
  const { bytes } = buildManifest({
    volume,
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
    entriesLeftOut: ledger.leftOut,
    // Also of evidence whose entry a copy leaves out for its position.
    plates: listExhibitImages(originals.exhibits, images),
    ...seal,
  });
  return [
    {
      name: MANIFEST_NAME,
      bytes,
      type: 'application/json',
      description: labels('attachment.manifest'),
      relationship: 'data',
    },
    ...enclosed.map(
      ({ what, ...file }): Attachment => ({
        ...file,
        relationship: what === 'original' ? 'source' : 'data',
      }),
    ),
  ];
}

/** The description of a redacted copy, in the language of its pages. */
function summaryOf(
  { copy, out }: RenderInput,
  { assessed, leftOut }: AssessedForReader,
): RedactionSummary | undefined {
  if (copy === undefined) return undefined;
  return {
    name: copy.name,
    title: titleIn(copy, assessed.state.delivery.show.language),
    positions: copy.positions,
    sectionsLeftOut: copy.leaveOut.sections,
    evidenceLeftOut: out.evidence.size,
    entriesLeftOut: out.entries.size,
    putRight: out.putRight,
    findingsLeftOut: leftOut.findings,
    requirementsLeftOut: leftOut.requirements,
  };
}

/** In English, for the terminal. */
const englishTitle = (summary: RedactionSummary | undefined, copy: RedactedCopy | undefined) =>
  summary === undefined || copy === undefined ? undefined : { ...summary, title: titleIn(copy, 'en') };

const { bytes } = numbersFor('en');

function largerThanWanted(size: number, mostBytes: number): string[] {
  if (size <= mostBytes) return [];
  return [
    `The dossier is ${bytes(size)}, more than the ${bytes(mostBytes)} asked for: its pages and records alone take that.`,
  ];
}

import { randomBytes } from 'node:crypto';
import { composeDossier } from '../../compose/compose.js';
import { listExhibitImages } from '../../compose/exhibit-images.js';
import { numberExhibits } from '../../compose/exhibits.js';
import type { RedactionSummary } from '../../compose/input.js';
import { loadLanguageWords } from '../../compose/language.js';
import { withRuleWords } from '../../compose/rule-words.js';
import type { CarrierTemplates } from '../../compose/templates.js';
import type { Typesetter } from '../../compose/typesetter.js';
import { entryBytes } from '../../core/ledger/ledger.js';
import { paper as paperSchema } from '../../core/model/delivery.js';
import { DossierError } from '../../core/model/error.js';
import type { Sha256 } from '../../core/model/evidence.js';
import { MANIFEST_NAME, type OmittedOriginal, type OriginalsBag } from '../../core/model/manifest.js';
import { omitUndefined } from '../../core/model/omit-undefined.js';
import type { RecordState } from '../../core/model/state.js';
import type { Instant } from '../../core/model/time.js';
import type { TimeStampClient } from '../../core/ports/time-stamps.js';
import { nextStep } from '../../core/ports/work.js';
import type { Labels } from '../../core/words/labels.js';
import type { DeliveryRecord } from '../../record/store.js';
import { buildManifest } from '../../signing/manifest.js';
import type { VisiblePlace } from '../../signing/placeholder.js';
import { redactLedger } from '../../signing/redact-message.js';
import { signPdf } from '../../signing/sign-pdf.js';
import { type AssessedDelivery, assessRecord } from '../assess.js';
import { type Enclosures, enclosures, originalsBytes } from '../attachments.js';
import { beginBag, type PendingBag } from '../bag.js';
import { intersectAssessments } from '../redaction/intersect-assessments.js';
import { withheldOriginals } from '../redaction/originals.js';
import { type RedactedCopy, titleIn } from '../redaction/read.js';
import { type Redaction, redactedState, unredactedState } from '../redaction/redact.js';
import { loadRuleWords } from '../rule-set.js';
import type { OpenedSigner } from '../signer.js';
import { tool } from '../tool.js';
import type { BuildInput } from './build-input.js';
import type { PendingImages } from './images.js';
import { formatOmittedOriginals } from './omitted-originals.js';
import type { Sizing } from './size.js';

export interface RenderInput extends PendingImages {
  factsText: string;
  opened: OpenedSigner;
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

/** Fonts, drawings and signature, and what each exhibit adds to pages and tags, in bytes: measured, rounded up. */
const PAGES_BYTES = 1_000_000;
const EXHIBIT_BYTES = 4_000;

/** Computes, sets and signs one dossier; the bag, when there is one, is begun and told. */
export async function render(
  record: DeliveryRecord,
  wanted: RenderInput,
  input: BuildInput,
  onBag: (begun: PendingBag) => void,
) {
  const { factsText, opened, builtAt, file, mostBytes, copy, out } = wanted;
  nextStep(input, { what: 'computing what the record shows' });
  const whole = record.state();
  const { own } = wanted.templates;
  const assessed = await assessRecord(
    record,
    builtAt,
    (state) => (copy === undefined ? unredactedState(state) : redactedState(state, out, copy)),
    own,
  );
  const said =
    copy === undefined
      ? { assessment: assessed.assessment, findingsLeftOut: 0, requirementsLeftOut: 0 }
      : intersectAssessments(
          (await assessRecord(record, builtAt, undefined, own)).assessment,
          assessed.assessment,
        );
  const { assessment } = said;
  const { logs, overlaps } = assessed;
  const state = onPaper(assessed.state, input.paper);
  const { language } = state.delivery.show;
  const [words, ruleWords] = await Promise.all([
    loadLanguageWords(language, wanted.templates),
    loadRuleWords(assessed.ruleSet, language),
  ]);
  const { labels } = words;
  const entries = record.entries.map(entryBytes);
  const ledger = redactLedger(entries, out.entries);
  // Exhibits keep the numbers that they have in the carrier's own dossier.
  const numbered = numberExhibits(whole).filter((one) => !out.evidence.has(one.evidence));
  const read = async (hash: Sha256) => record.readOriginal(hash);
  const not = copy === undefined ? withheldFiles(state) : await withheldOriginals(whole, out, copy, read);
  const parts = { ledger: Buffer.from(ledger.bytes), facts: factsText };
  let bag: OriginalsBag | undefined;
  const pack = () => {
    const begun = beginBag(record, { dossier: file, ...parts, builtAt, signal: input.signal });
    onBag(begun);
    const { file: _, ...told } = begun.bag;
    bag = told;
  };
  nextStep(input, { what: 'preparing the pictures' });
  // Where originals are left out however small the plates are, the bag is begun while the last of these are made: it
  // keeps one core busy about as long as these and the setting of pages keep the other.
  await wanted.nearlyMade;
  if (copy === undefined && (input.bag === true || originalsBytes(numbered, not) > mostBytes)) pack();
  const images = await wanted.images;
  const made = await enclosuresWithin(
    record,
    { ...assessed, assessment },
    parts,
    numbered,
    not,
    mostBytes - images.bytes,
    labels,
  );
  const { enclosed, exhibits } = made;
  const leftOut = [...made.leftOut, ...filesOf(whole, out)];
  const fingerprint = record.head;
  if (copy === undefined && bag === undefined && leftOut.some(({ why }) => why === 'size-budget')) pack();
  const listed = exhibits.filter(({ seq }) => !out.entries.has(seq));
  const { bytes: manifestBytes } = buildManifest({
    delivery: state.delivery.delivery,
    builtAt,
    tool: tool(),
    entries,
    ruleSet: ruleSetOf(assessed),
    exhibits: listed,
    attachments: enclosed,
    leftOut,
    entriesLeftOut: ledger.leftOut,
    plates: listExhibitImages(listed, images),
    ...omitUndefined({ bag }),
  });
  const sizing: Sizing = {
    mostBytes,
    picture: images.quality,
    originalsInside: enclosed.filter(({ what }) => what === 'original').length,
    originalsNotInside: leftOut.length,
  };
  const copyWords: RedactionSummary | undefined =
    copy === undefined
      ? undefined
      : {
          name: copy.name,
          title: titleIn(copy, language),
          positions: copy.positions,
          sectionsLeftOut: copy.leaveOut.sections,
          evidenceLeftOut: out.evidence.size,
          entriesLeftOut: out.entries.size,
          findingsLeftOut: said.findingsLeftOut,
          requirementsLeftOut: said.requirementsLeftOut,
        };
  const signer = { name: opened.subject, certificateSha256: opened.certificateSha256 };
  nextStep(input, { what: 'setting the pages' });
  const { pdf, warnings, pages, signature } = await composeDossier(
    {
      state,
      assessment: withRuleWords(assessment, ruleWords),
      logs,
      overlaps,
      exhibits,
      attachments: [
        {
          name: MANIFEST_NAME,
          bytes: manifestBytes,
          type: 'application/json',
          description: labels('attachment.manifest'),
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
      readOriginal: read,
      builtAt,
      fingerprint,
      signer,
      tool: tool(),
      plates: images,
      sizing,
      ...omitUndefined({ copy: copyWords }),
      templates: wanted.templates,
      words,
    },
    wanted.typesetter,
  );
  nextStep(input, { what: 'signing' });
  const signed = await sign(pdf, wanted, signature, fingerprint.delivery, input);
  return {
    ...signed,
    pages,
    warnings,
    said: [
      ...(signed.pdf.length > mostBytes
        ? [
            `The dossier is ${inMegabytes(signed.pdf.length)}, more than the ${inMegabytes(mostBytes)} asked for: its pages and records alone take that.`,
          ]
        : []),
      ...formatOmittedOriginals(made.leftOut, mostBytes),
    ],
    sizing,
    ...omitUndefined({
      copy:
        copy === undefined || copyWords === undefined
          ? undefined
          : { ...copyWords, title: titleIn(copy, 'en') },
    }),
    fingerprint,
    signer,
  };
}

const inMegabytes = (bytes: number) => `${(bytes / 1e6).toFixed(1)} MB`;

async function sign(
  pdf: Uint8Array,
  wanted: RenderInput,
  visible: VisiblePlace | undefined,
  delivery: string,
  input: BuildInput,
) {
  const { timeStamps, now, signal } = input;
  let stampedTime: string | undefined;
  const stampFrom =
    (from: TimeStampClient) =>
    async (value: Uint8Array): Promise<Uint8Array> => {
      const { obtainTimeStamp } = await import('../time-stamp.js');
      const { token, at } = await obtainTimeStamp({ from, now, signal }, value);
      stampedTime = at.toISOString();
      return token;
    };
  const signed = await signPdf(pdf, wanted.opened.signer, {
    at: wanted.builtAt,
    reason: `Dossier of delivery ${delivery}`,
    random: (count) => randomBytes(count),
    ...omitUndefined({
      visible,
      stamp: timeStamps === undefined ? undefined : stampFrom(timeStamps),
      signal,
    }),
  });
  return { pdf: signed, ...omitUndefined({ stampedTime }) };
}

const ruleSetOf = ({ ruleSet }: AssessedDelivery) => ({
  name: ruleSet.ruleSet.ruleSet,
  version: ruleSet.ruleSet.version,
  bytes: Buffer.from(ruleSet.text, 'utf8'),
});

/** Enclosures with as many originals as the room allows beside tables and pages. */
async function enclosuresWithin(
  record: DeliveryRecord,
  assessed: AssessedDelivery,
  parts: { ledger: Uint8Array; facts: string },
  numbered: Parameters<typeof enclosures>[3],
  not: ReadonlyMap<Sha256, OmittedOriginal['why']>,
  room: number,
  labels: Labels,
): Promise<Enclosures> {
  const bare = await enclosures(record, assessed, parts, [], { originals: 0, not }, labels);
  const own = bare.enclosed.reduce((sum, { bytes }) => sum + bytes.length, 0);
  const originals = Math.max(0, room - own - PAGES_BYTES - EXHIBIT_BYTES * numbered.length);
  return enclosures(record, assessed, parts, numbered, { originals, not }, labels);
}

function withheldFiles(state: RecordState): Map<Sha256, OmittedOriginal['why']> {
  return new Map(
    state.evidence.flatMap((item) =>
      'file' in item && item.withheld !== undefined ? [[item.file.sha256, 'withheld'] as const] : [],
    ),
  );
}

/** Files of evidence that a copy does not name: size and hash stay, the name does not. */
function filesOf(state: RecordState, redaction: Redaction): OmittedOriginal[] {
  return state.evidence.flatMap((item): OmittedOriginal[] =>
    'file' in item && redaction.evidence.has(item.evidence)
      ? [{ name: '(left out)', bytes: item.file.bytes, sha256: item.file.sha256, why: 'withheld' }]
      : [],
  );
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

import { AFRelationship, PDFDocument, PDFName, StandardFonts } from '#pdf-lib';
import { canonicalBytes } from '../../src/core/ledger/canonical.js';
import { sha256Of } from '../../src/core/ledger/tree.js';
import { entry } from '../../src/core/model/entry.js';
import {
  type Exhibit,
  exhibit,
  MANIFEST_NAME,
  type Manifest,
  type OmittedOriginal,
} from '../../src/core/model/manifest.js';
import { toInstant } from '../../src/core/model/time.js';
import { type AttachmentInput, buildManifest } from '../../src/signing/manifest.js';

/** A made-up delivery, small enough to be read whole. */
export const BUILT_AT = toInstant(Date.UTC(2026, 6, 17, 9, 0, 0));
export const text = (words: string) => new TextEncoder().encode(words);

/** Evidence may hold any bytes, also those of a signature's placeholder. */
export const PHOTO = text(
  'not a real picture, and no matter: /Type /Sig /ByteRange [0 0 0 0] /Contents <0000000000> %%EOF startxref endobj',
);
export const PAPER = text('Bill of lading 88-1204: 12 pallets, load at 36 F');
export const FACTS_YAML = text('delivery: 2026-0714-A\n# and what else the file says\n');
export const RULES = text('ruleSet: produce\n');

const facts = {
  delivery: '2026-0714-A',
  parties: { carrier: { name: 'Harrow Creek Transport' } },
  equipment: { trailer: { number: 'T-118' } },
  stops: [
    { id: 'load-1', does: 'load', place: 'Cold dock, Esparto Flats', zone: 'America/Phoenix' },
    { id: 'drop-1', does: 'unload', place: 'Warehouse 4, Lower Platte', zone: 'America/Chicago' },
  ],
  lines: [{ id: 'romaine', goods: 'lettuce-romaine', from: 'load-1', to: 'drop-1' }],
};
const at = (seq: number) => toInstant(Date.UTC(2026, 6, 14, 12, seq, 0));
const noTime = { is: 'none', why: 'made for a test' };
const fileOf = (name: string, bytes: Uint8Array, type: string) => ({
  name,
  bytes: bytes.length,
  sha256: sha256Of(bytes),
  type,
});

const ENTRIES: readonly Record<string, unknown>[] = [
  { type: 'delivery-facts', body: { sha256: sha256Of(FACTS_YAML), facts } },
  {
    type: 'evidence-received',
    body: {
      kind: 'photo',
      evidence: 'e1',
      time: noTime,
      flags: [],
      file: fileOf('a.jpg', PHOTO, 'image/jpeg'),
    },
  },
  {
    type: 'evidence-received',
    body: {
      kind: 'document',
      evidence: 'e2',
      time: noTime,
      flags: [],
      file: fileOf('b.txt', PAPER, 'text/plain'),
    },
  },
  {
    type: 'reading-recorded',
    body: {
      kind: 'pulp',
      evidence: 'e3',
      time: noTime,
      source: { is: 'typed' },
      from: 'driver',
      temperature: { value: 35.2, unit: '°F' },
    },
  },
];

/** The bytes of the ledger's entries, without line feeds. */
export function ledgerEntries(): Uint8Array[] {
  return ENTRIES.map((one, seq) => {
    const whole = { seq, at: at(seq), by: 'M. Ortega', ...one };
    entry.parse(whole);
    return canonicalBytes(whole);
  });
}

export function asLines(entries: readonly Uint8Array[]): Uint8Array {
  return Buffer.concat(entries.flatMap((one) => [one, Uint8Array.of(0x0a)]));
}

export const exhibits: readonly Exhibit[] = [
  {
    exhibit: 1,
    evidence: 'e1',
    seq: 1,
    kind: 'photo',
    file: fileOf('a.jpg', PHOTO, 'image/jpeg'),
    attachedAs: 'e1.jpg',
  },
  { exhibit: 2, evidence: 'e2', seq: 2, kind: 'document', file: fileOf('b.txt', PAPER, 'text/plain') },
  { exhibit: 3, evidence: 'e3', seq: 3, kind: 'pulp' },
].map((one) => exhibit.parse(one));
export const leftOut: readonly OmittedOriginal[] = [
  { name: 'b.txt', bytes: PAPER.length, sha256: sha256Of(PAPER), why: 'size-budget' },
];

/** What goes into a dossier; a test changes one part of it. */
export interface Parts {
  attached: AttachmentInput[];
  manifest: Manifest;
}

export function sampleParts(): Parts {
  const entries = ledgerEntries();
  const attached: AttachmentInput[] = [
    { name: 'ledger.jsonl', bytes: asLines(entries), type: 'application/jsonl', what: 'ledger' },
    { name: 'delivery.yaml', bytes: FACTS_YAML, type: 'application/yaml', what: 'delivery-facts' },
    { name: 'rule-set.yaml', bytes: RULES, type: 'application/yaml', what: 'rule-set' },
    { name: 'e1.jpg', bytes: PHOTO, type: 'image/jpeg', what: 'original' },
  ];
  const { manifest } = buildManifest({
    volume: 'dossier',
    delivery: '2026-0714-A',
    builtAt: BUILT_AT,
    tool: { name: 'load-dossier', version: '0.0.0' },
    entries,
    ruleSet: { name: 'produce', version: '1', bytes: RULES },
    exhibits,
    attachments: attached,
    leftOut,
    plates: [],
    timeStamp: 'none',
  });
  return { attached, manifest };
}

/** Lists what is attached anew, so that sizes and hashes fit again after a test has changed a part. */
export function relist(parts: Parts): Parts {
  const attachments = parts.attached.map(({ name, bytes, type, what }) => ({
    name,
    bytes: bytes.length,
    sha256: sha256Of(bytes),
    type,
    what,
  }));
  return { ...parts, manifest: { ...parts.manifest, attachments } };
}

/** Refers to every object from the catalog, so that one which a test put in is not left over. */
function hold({ catalog, context }: PDFDocument): void {
  catalog.set(PDFName.of('Held'), context.obj(context.enumerateIndirectObjects().map(([ref]) => ref)));
}

/** An unsigned PDF with the parts attached. `touch` may change the document before it is saved. */
export async function samplePdf(
  parts: Parts = sampleParts(),
  touch?: (document: PDFDocument) => void | Promise<void>,
  finish: (document: PDFDocument) => void = hold,
): Promise<Uint8Array> {
  const document = await PDFDocument.create();
  document.setTitle('Delivery 2026-0714-A');
  const dated = new Date(BUILT_AT);
  document.setCreationDate(dated);
  document.setModificationDate(dated);
  const page = document.addPage([300, 200]);
  page.drawText('A page of the dossier', {
    x: 20,
    y: 150,
    font: await document.embedFont(StandardFonts.Helvetica),
    size: 12,
  });
  const all = [
    ...parts.attached,
    { name: MANIFEST_NAME, bytes: canonicalBytes(parts.manifest), type: 'application/json' },
  ];
  for (const { name, bytes, type } of all)
    await document.attach(bytes, name, {
      mimeType: type,
      description: name,
      creationDate: dated,
      modificationDate: dated,
      afRelationship: AFRelationship.Data,
    });
  if (touch !== undefined) {
    await touch(document);
    finish(document);
  }
  return document.save();
}

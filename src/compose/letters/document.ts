import { isRefused } from '../../core/assess/outcomes.js';
import { omitUndefined } from '../../core/model/omit-undefined.js';
import type { Block, Fact, Inline } from '../../core/words/blocks.js';
import { plain, text } from '../../core/words/blocks.js';
import { type DocumentHead, typstPaperName } from '../../core/words/document-head.js';
import { referenceText, stopParty } from '../view/reference-text.js';
import type { LetterInput } from './input.js';
import { LETTER_PROFILES } from './kinds.js';
import { claimFacts } from './of-claim.js';
import { inspectionFacts } from './of-inspection.js';
import { otherClaimFacts } from './of-other-claims.js';
import { recordFacts } from './of-record.js';
import type { LetterView } from './view.js';

/** A table that lists exhibits; the last column is a hash. */
export interface Annex {
  title: string;
  columns: string[];
  rows: string[][];
}

/** The JSON document of a letter, from which its pages and its plain text are made. */
export interface LetterDocument extends DocumentHead {
  page: string;
  pageOf: string;
  /** Precedes an exhibit number. */
  exhibit: string;
  letterhead?: { asset: string; alt: string };
  sender: string[];
  to?: { label: string; lines: Inline[][] };
  date?: string;
  subject: string;
  /** Reference numbers and names. */
  about: Fact[];
  body: Block[];
  /** Room for a person to sign. */
  sign?: { closing: string; for: string; lines: string[] };
  enclosed?: { title: string; items: Inline[][] };
  /** Explains the exhibit numbers; empty when the body has none. */
  exhibitsNote?: Inline[];
  annex?: Annex;
}

/** Parts common to letters and certificates. */
export function commonParts({
  input,
  labels,
}: LetterView): Omit<LetterDocument, 'title' | 'subject' | 'about' | 'body'> {
  const { delivery } = input.state;
  const { name = '', address, contact } = delivery.parties.carrier ?? {};
  return {
    language: input.language,
    region: 'US',
    paper: typstPaperName(input.paper),
    author: name,
    description: labels('letter.description'),
    page: labels('letter.page'),
    pageOf: labels('letter.page-of'),
    exhibit: labels('letter.exhibit'),
    sender: [name, address, contact].filter((line) => line !== undefined && line !== '') as string[],
  };
}

/** The document of one letter. */
export function letterDocument(view: LetterView<LetterInput>): LetterDocument {
  const { input, labels, words } = view;
  const { kind, state } = input;
  const { delivery } = state;
  const subject = labels(`subject.${kind}`);
  const to = input.to === undefined ? view.blank('recipient') : plain(input.to.name);
  const needsAddress = LETTER_PROFILES[kind].signed;
  const address =
    input.to?.address === undefined
      ? needsAddress
        ? [view.blank('address')]
        : []
      : [plain(input.to.address)];
  const facts = {
    ...claimFacts(view),
    ...recordFacts(view),
    ...inspectionFacts(view),
    ...otherClaimFacts(view),
  };
  const body = words.blocks(`letters/${kind}`, facts);
  return {
    ...commonParts(view),
    title: `${subject} · ${delivery.delivery}`,
    to: { label: labels('letter.to'), lines: [to, ...address] },
    date: view.day(input.day),
    subject,
    about: aboutLines(view),
    body,
    ...omitUndefined({
      sign: LETTER_PROFILES[kind].signed
        ? {
            closing: labels('letter.closing'),
            for: delivery.parties.carrier?.name ?? '',
            lines: ['signature', 'name', 'position'].map((name) => labels(`letter.${name}`)),
          }
        : undefined,
    }),
    ...enclosedPart(view),
    ...omitUndefined({ exhibitsNote: namesExhibits(body) ? exhibitsNote(view) : undefined }),
  };
}

function aboutLines({ input, labels, names }: LetterView<LetterInput>): Fact[] {
  const { delivery } = input.state;
  const received = input.claim?.entries.findLast(
    (entry) => entry.is === 'received' && entry.replacedBy === undefined,
  );
  const fact = (name: string, value: string | undefined): Fact[] =>
    value === undefined ? [] : [{ label: labels(`re.${name}`), value: plain(value) }];
  return [
    ...(received?.is === 'received'
      ? [...fact('our-number', received.ourNumber), ...fact('their-number', received.theirNumber)]
      : []),
    ...fact('delivery', delivery.delivery),
    ...fact('references', referenceText(labels, delivery.references) || undefined),
    ...fact('goods', [...new Set(delivery.lines.map(({ id }) => names.line(id)))].join('; ')),
    ...fact('route', delivery.stops.map(({ place }) => place).join(' → ')),
    ...fact('consignee', consigneeText(labels, input) || undefined),
    ...fact('trailer', delivery.equipment.trailer.number),
  ];
}

/** Consignees of the stops that refused goods, else of all stops, each with the numbers of its stop. */
function consigneeText(labels: LetterView['labels'], { state, assessment }: LetterInput): string {
  const drops = state.delivery.stops.filter(({ does }) => does === 'unload');
  const refused = new Set(assessment.outcomes.filter(isRefused).map(({ stop }) => stop));
  const meant = refused.size === 0 ? drops : drops.filter(({ id }) => refused.has(id));
  return meant
    .map((stop) => stopParty(labels, stop).join('; '))
    .filter((text) => text !== '')
    .join(' · ');
}

function enclosedPart({ input, labels, format }: LetterView): Pick<LetterDocument, 'enclosed'> {
  if (input.enclosed.length === 0) return {};
  return {
    enclosed: {
      title: labels('letter.enclosed'),
      items: input.enclosed.map(({ name, what, bytes, sha256 }): Inline[] => [
        text(
          `${name} (${labels(`what.${what}`)}), ${format.number(bytes)} ${labels('letter.bytes')}, SHA-256 `,
        ),
        { is: 'code', text: sha256 },
      ]),
    },
  };
}

/** The dossier that the exhibit numbers belong to, identified by its record's fingerprint, whatever the file. */
function exhibitsNote({ input, labels, format }: LetterView): Inline[] {
  const { fingerprint, enclosed } = input;
  const is = enclosed.some(({ what }) => what === 'dossier') ? 'enclosed' : 'kept';
  const words = labels(`letter.exhibits-${is}`)
    .replace('SIZE', () => format.number(fingerprint.size))
    .replace('DELIVERY', () => fingerprint.delivery);
  return [text(`${words}: `), { is: 'code', text: fingerprint.root }];
}

function namesExhibits(blocks: readonly Block[]): boolean {
  return JSON.stringify(blocks).includes('{"is":"exhibit"');
}

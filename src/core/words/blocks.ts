import type { DocumentHead } from './document-head.js';

/** The block tree that the typesetter renders. Everything a person wrote is text in it, never markup. */
export type Inline =
  | { is: 'text'; text: string }
  | { is: 'strong' | 'emphasis'; of: Inline[] }
  | { is: 'code'; text: string }
  /** A link to the exhibit's image or row; `here` where this is the place that others link to. */
  | { is: 'exhibit'; number: number; here?: true };

export interface Column {
  title: string;
  /** Share of the width; 0 takes what the content needs. */
  width: number;
  align?: 'left' | 'right' | 'center';
}
/** `alert` marks a value out of range. */
export type Cell = Inline[] | { is: 'alert'; of: Inline[] };

export interface Fact {
  label: string;
  value: Inline[];
}

export interface ExhibitImageBlock {
  is: 'plate';
  number: number;
  /** Two to a page, four to a page, or pages of a document. */
  size: 'large' | 'small' | 'paper';
  /** The picture, or the first pages of a document; empty when it can't be shown. Sides in pixels. */
  pictures: { asset: string; width: number; height: number; alt: string }[];
  /** Beginning of a text file. */
  words?: string;
  /** Why there is no picture, or its defect. */
  trouble?: string;
  title: string;
  caption: Inline[];
  facts: Fact[];
  flags: string[];
  sha256?: string;
  /** Sections that refer to it. */
  seenIn: { id: string; title: string }[];
}

export type Block =
  | { is: 'paragraph'; of: Inline[] }
  | { is: 'heading'; level: 2 | 3; text: string }
  | { is: 'list'; ordered: boolean; items: Block[][] }
  | { is: 'code'; text: string }
  | { is: 'quote'; of: Block[] }
  | { is: 'facts'; facts: Fact[] }
  | {
      is: 'table';
      columns: Column[];
      rows: Cell[][] /** Exhibit number of each row, to link to. */;
      anchors?: number[];
    }
  | { is: 'picture'; asset: string; alt: string; caption: Inline[] }
  /** States that there is no evidence, so that the section does not vanish. */
  | { is: 'none'; of: Inline[] }
  | { is: 'plates'; size: ExhibitImageBlock['size']; plates: ExhibitImageBlock[] };

export interface Section {
  id: string;
  title: string;
  blocks: Block[];
}

export interface CoverLine {
  weighs: 'helps' | 'hurts' | 'open';
  mark: string;
  of: Inline[];
}
/** What the first page of an assessment says of findings and requirements. */
export interface CoverWeighing {
  linesTitle: string;
  lines: CoverLine[];
  /** Printed when there are more findings than lines. */
  more: Inline[];
  missingTitle: string;
  missing: Inline[];
  /** The weightiest unmet requirements. */
  missingLines: Inline[][];
}
export interface Cover {
  kind: string;
  delivery: string;
  route: string;
  /** What the file is, and what it is not. */
  says: Inline[];
  happened: Inline[];
  facts: Fact[];
  /** Of a dossier: outcome, pulps, air, notices, set points. */
  shows?: Block[];
  /** Of an assessment. */
  weighing?: CoverWeighing;
  proof: Fact[];
  /** The fingerprint to be read by a phone. */
  code: { asset: string; alt: string; caption: string };
  /** Of a redacted copy: its reader and what it omits. */
  copy?: Inline[];
  /** Picture of the carrier's letterhead among the assets. */
  letterhead?: { asset: string; alt: string };
  cautions: Block[];
}

/** The words of the visible signature: known before the file is signed. */
export interface SignatureBlock {
  title: string;
  facts: Fact[];
  /** How to check it. */
  check: Inline[];
  /** The block in one line, for a screen reader. */
  alt: string;
}

/** The one JSON document that the typesetter reads. */
export interface DossierDocument extends DocumentHead {
  running: string;
  /** For whom a confidential file is, on each page. */
  marking?: string;
  page: string;
  pageOf: string;
  contents: string;
  exhibit: string;
  seenIn: string;
  /** Exhibit numbers that can be linked to. */
  exhibits: number[];
  cover: Cover;
  sections: Section[];
  signature: SignatureBlock;
}

export const text = (value: string): Inline => ({ is: 'text', text: value });
export const plain = (value: string): Inline[] => [text(value)];
export const paragraph = (...of: Inline[]): Block => ({ is: 'paragraph', of });

/** The text of a tree without its marks, for alternative texts. */
export function wordsOf(of: readonly Inline[]): string {
  return of.map(wordsIn).join('');
}

function wordsIn(node: Inline): string {
  switch (node.is) {
    case 'text':
    case 'code':
      return node.text;
    case 'exhibit':
      return String(node.number);
    case 'strong':
    case 'emphasis':
      return wordsOf(node.of);
  }
}

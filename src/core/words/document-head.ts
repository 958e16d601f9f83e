import type { Paper } from '../model/delivery.js';

/** Metadata of every typeset document: on its pages, and for programs that list files. */
export interface DocumentHead {
  language: string;
  region: string;
  paper: 'us-letter' | 'a4';
  title: string;
  author: string;
  description: string;
}

/** The typesetter's name of a paper size. */
export const typstPaperName = (paper: Paper): DocumentHead['paper'] => (paper === 'A4' ? 'a4' : 'us-letter');

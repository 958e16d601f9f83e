import type { Paper } from '../model/delivery.js';

/** What every typeset document says of itself: on its pages, and to programs that list files. */
export interface DocumentHead {
  language: string;
  region: string;
  paper: 'us-letter' | 'a4';
  title: string;
  author: string;
  description: string;
}

/** The typesetter's own name of a paper. */
export const typstPaperName = (paper: Paper): DocumentHead['paper'] => (paper === 'A4' ? 'a4' : 'us-letter');

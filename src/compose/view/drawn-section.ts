import type { Section } from '../../core/words/blocks.js';

/** A section with the drawings that its blocks name. */
export interface DrawnSection {
  section: Section;
  /** SVG by asset name. */
  drawings: ReadonlyMap<string, string>;
}

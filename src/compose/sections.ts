import type { Volume } from '../core/model/manifest.js';

/**
 * Every section in the shipped order, and the volume that it stands in: what was recorded and computed stands in the
 * dossier, what is weighed or missing in the assessment.
 */
const VOLUME_OF = {
  glance: 'dossier',
  'set-points': 'dossier',
  temperatures: 'dossier',
  pulps: 'dossier',
  loading: 'dossier',
  'before-loading': 'dossier',
  transit: 'dossier',
  arrival: 'dossier',
  inspections: 'dossier',
  claim: 'dossier',
  next: 'assessment',
  findings: 'assessment',
  position: 'assessment',
  differences: 'assessment',
  product: 'assessment',
  margins: 'assessment',
  'good-delivery': 'assessment',
  missing: 'assessment',
  method: 'both',
  custody: 'dossier',
  verify: 'both',
  exhibits: 'dossier',
} as const satisfies Readonly<Record<string, Volume | 'both'>>;

export type SectionName = keyof typeof VOLUME_OF;

const isSection = (name: string): name is SectionName => Object.hasOwn(VOLUME_OF, name);

/** Every section, in the shipped order. */
export const SECTIONS: readonly SectionName[] = Object.keys(VOLUME_OF).filter(isSection);

/** Whether a section stands in a volume. */
export const standsIn = (name: SectionName, volume: Volume): boolean =>
  VOLUME_OF[name] === volume || VOLUME_OF[name] === 'both';

/** Sections that a redacted copy may omit. Exhibits and the proof are in every copy. */
export const OPTIONAL_SECTIONS = [
  'glance',
  'set-points',
  'temperatures',
  'pulps',
  'loading',
  'before-loading',
  'transit',
  'arrival',
  'inspections',
  'claim',
] as const satisfies readonly SectionName[];

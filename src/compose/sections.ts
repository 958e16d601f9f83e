/** Sections that a redacted copy may omit. Findings, missing evidence, exhibits and the proof are in every copy. */
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
  'good-delivery',
  'claim',
] as const;

/** Every section, in the shipped order. */
export const SECTIONS: readonly string[] = [
  ...OPTIONAL_SECTIONS,
  'findings',
  'missing',
  'exhibits',
  'method',
  'custody',
  'verify',
];

/** Sections that a copy can do without. Findings, what is missing, exhibits and the proof are in every copy. */
export const OPTIONAL_SECTIONS = [
  'glance',
  'set-points',
  'temperatures',
  'pulps',
  'loading',
  'before-loading',
  'transit',
  'arrival',
  'claim',
] as const;

/** Every section, in the order of the pages as shipped. */
export const SECTIONS: readonly string[] = [
  ...OPTIONAL_SECTIONS,
  'findings',
  'missing',
  'exhibits',
  'method',
  'custody',
  'verify',
];

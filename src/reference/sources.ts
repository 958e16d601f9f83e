/** Where published values come from, by the short key that stands beside each value. */
export const sources = {
  UCD: 'UC Davis Postharvest Center, produce fact sheet of the commodity',
  CW: 'Cantwell, UC Davis, "Properties and recommended conditions for long-term storage of fresh fruits and vegetables", November 2001',
  PD: 'Lamikanra and others, Produce Degradation (2005), tables 20.1, 20.2 and 20.5, developed from USDA Agriculture Handbook 66 (2002 draft)',
  NE16: 'New England Vegetable Management Guide, table 16, adapted from USDA Agriculture Handbook 66',
  SL: 'Table L3.3, fresh fruits: temperature, humidity, life and highest freezing point, derived from USDA Agriculture Handbook 66',
  MG: 'McGregor (1989), Tropical Products Transport Handbook, USDA Agriculture Handbook 668, compatibility groups',
  CT: 'Container commodity table, author not stated, letters A to G; a secondary source',
  WF: 'WFLO Commodity Storage Manual, melons, revised 2008',
  USU: 'Utah State University, Vegetable Production guide, postharvest pages',
  NCS: 'NC State Extension, postharvest series',
  GAG: 'USDA good-arrival table, optimum transit temperatures, as republished by the trade press',
  WFP: 'Western Farm Press, report of University of California work',
  CH: 'Cargo handbook, entry of the commodity',
  M: 'From memory of USDA Agriculture Handbooks 66 and 669 and the UC Davis table; not read in a source',
} as const;
export type SourceKey = keyof typeof sources;

export function isSourceKey(text: string): text is SourceKey {
  return Object.hasOwn(sources, text);
}

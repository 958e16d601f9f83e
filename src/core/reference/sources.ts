/** Sources of published values, by the short key beside each value. */
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
  ST: 'Table of storage conditions and freezing points of vegetables, author not stated; a secondary source',
  MSX: 'Mississippi State University Extension, "Avoid sweetpotato chilling injury", February 2015',
  UCR: 'Cantwell, UC Davis, "Postharvest handling: roots, tubers, bulbs", Postharvest Technology Short Course, June 2009',
  NCB: 'NC State University, Biological and Agricultural Engineering, "Specific heat and heat of respiration for horticultural crops grown in North Carolina", from USDA Agriculture Handbook 66 (1986)',
  M: 'From memory of USDA Agriculture Handbooks 66 and 669 and the UC Davis table; not read in a source',
} as const;
/** Short name of a source in `sources`. */
export type SourceKey = keyof typeof sources;

export function isSourceKey(text: string): text is SourceKey {
  return Object.hasOwn(sources, text);
}

/** What a published value is about. */
export type PublishedField =
  | 'range'
  | 'freezing'
  | 'chilling'
  | 'humidity'
  | 'ethylene'
  | 'top-ice'
  | 'life'
  | 'respiration';

const FACT_SHEET: Record<PublishedField, string> = {
  range: 'section Optimum Temperature',
  freezing: 'section Freezing Injury',
  chilling: 'section Chilling Injury',
  humidity: 'section Optimum Relative Humidity',
  ethylene: 'sections Rates of Ethylene Production and Responses to Ethylene',
  'top-ice': 'section Optimum Temperature',
  life: 'section Optimum Temperature',
  respiration: 'section Rates of Respiration',
};
const DEGRADATION: Partial<Record<PublishedField, string>> = {
  range: 'tables 20.1 and 20.2',
  humidity: 'tables 20.1 and 20.2',
  life: 'tables 20.1 and 20.2',
  chilling: 'table 20.5, p. 639',
};

/** The section of a source that holds a value, where the source has sections. */
export function sectionOf(source: SourceKey, field: PublishedField): string | undefined {
  switch (source) {
    case 'UCD':
      return FACT_SHEET[field];
    case 'PD':
      return DEGRADATION[field];
    case 'MG':
      return field === 'top-ice' ? 'compatibility groups, mark for top ice' : undefined;
    case 'CW':
      return field === 'freezing' ? 'column Highest freezing temperature' : 'row of the commodity';
    case 'NE16':
      return field === 'top-ice' ? 'column Transit icing' : 'row of the commodity';
    default:
      return undefined;
  }
}

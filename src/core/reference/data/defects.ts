import type { DefectCauseText } from '../../model/results.js';

/**
 * Defects of produce as inspection certificates name them, one a line: id, English names, Spanish names, nature, and
 * what the nature rests on. `46.44` is the regulation's own word (tipburn and decay are its condition defects), `trade`
 * the two lists of a growers' association (wga.com/news/in-or-out-with-defects, 12 May 2021: hollow stem, seed stem,
 * misshapen and scarring are permanent; decay, insects, bruising and discoloration progress with age), `practice`
 * common practice without a source.
 */
export const defectLines = `
decay|decay; rot; soft rot; slime; breakdown|pudrición; podredumbre; descomposición|condition|46.44
gray-mold|gray mold; grey mold; gray mold rot; botrytis; mold; mould|moho gris; moho; botritis|condition|trade
tipburn|tipburn; tip burn|quemadura de puntas; quemado de puntas; tip burn|condition|46.44
bruising|bruising; bruise; bruises; crushing; crushed|magulladuras; magullado; aplastado; golpes|condition|trade
mechanical|mechanical damage; mechanical injury; broken midribs; cuts; cracked|daño mecánico; cortes|condition|practice
russet-spotting|russet spotting; russet spots|mancha rojiza; manchas rojizas; russet spotting|condition|trade
brown-stain|brown stain|mancha parda; brown stain|condition|trade
discoloration|discoloration; discolored; discolouration; pink rib; pinking|decoloración; nervadura rosada|condition|trade
yellowing|yellowing; yellow leaves; yellow florets; loss of green color|amarillamiento; amarilleo|condition|trade
wilting|wilting; wilted; shriveling; shriveled; limp; flabby|marchitez; marchito; deshidratación; flacidez|condition|practice
freezing|freezing injury; freeze damage; frozen; freezing damage; frost injury|daño por congelación; congelado; helada|condition|practice
chilling|chilling injury; chill damage; chilling|daño por frío|condition|practice
pitting|pitting; sunken areas; surface pitting|picado; hundimientos|condition|practice
water-soaked|water soaked; water-soaked; watersoaked; water soaking; translucent|acuoso; aspecto acuoso|condition|practice
insects|live insects; insects; worms; aphids|insectos vivos; insectos; pulgones|condition|trade
seedstems|seedstems; seed stems; seedstem; seed stem; bolting|tallo floral; espigado|permanent|trade
hollow-stem|hollow stem; hollow stems|tallo hueco|permanent|trade
misshapen|misshapen; deformed; poorly formed|deforme; malformado|permanent|trade
scars|scars; scarring; scarred|cicatrices; cicatriz|permanent|trade
`;

/** Public texts about what causes defects: short name, what the text is, address. All read 1 December 2026. */
export const causeSources = {
  'ucd-lettuce': {
    name: 'UC Davis, crisphead lettuce',
    address: 'https://postharvest.ucdavis.edu/produce-facts-sheets/lettuce-crisphead',
  },
  'ucd-romaine': {
    name: 'UC Davis, romaine lettuce',
    address:
      'https://postharvest.ucdavis.edu/Commodity_Resources/Fact_Sheets/Datastores/Vegetables_English/index.cfm?uid=20&ds=799',
  },
  'ucd-cucumber': {
    name: 'UC Davis, cucumber',
    address: 'https://postharvest.ucdavis.edu/produce-facts-sheets/cucumber',
  },
  'ucd-broccoli': {
    name: 'UC Davis, broccoli',
    address:
      'https://postharvest.ucdavis.edu/Commodity_Resources/Fact_Sheets/Datastores/Vegetables_English/index.cfm?uid=6&ds=799',
  },
  'ucd-celery': {
    name: 'UC Davis, celery',
    address: 'https://postharvest.ucdavis.edu/produce-facts-sheets/celery',
  },
  'uc-ipm-tipburn': {
    name: 'UC IPM, tipburn of lettuce',
    address: 'https://ipm.ucanr.edu/agriculture/lettuce/tipburn',
  },
  'phytopathology-1978': {
    name: 'Misaghi and Grogan, Phytopathology 68 (1978), 1738, abstract',
    address:
      'https://www.apsnet.org/publications/phytopathology/backissues/Documents/1978Abstracts/Phyto68_1738.htm',
  },
  'jashs-1971': {
    name: 'J. Amer. Soc. Hort. Sci. 96 (1971), 27, abstract',
    address: 'https://scilit.com/publications/e016c4fefc5c7e8ffaf41c0fcb93651d',
  },
  'ashrae-vegetables': {
    name: 'ASHRAE, Vegetables (chapter 24), opening, as retold by a supplier',
    address: 'https://dmgi.com.sg/resources/vegetables',
  },
  'plant-disease-2013': {
    name: 'Grabke et al., Plant Disease 97 (2013), 271, as quoted in a weblog',
    address: 'https://pesticideguy.org/2014/10/23/surprise-your-strawberries-are-moldy/',
  },
  'horticultural-reviews-44': {
    name: 'Horticultural Reviews 44, chapter 5, abstract',
    address: 'https://issuhub.com/view/index/8292?pageIndex=193',
  },
  'ifas-pp294': {
    name: 'UF/IFAS PP294, postharvest quality of tomatoes',
    address:
      'https://vdocuments.mx/postharvest-quality-and-decay-incidence-among-edisifasufledupdffilespp.html',
  },
  'australia-cucumber': {
    name: 'Australian postharvest guide, cucumber',
    address: 'https://www.postharvest.net.au/product-guides/cucumber/',
  },
} as const satisfies Record<string, { name: string; address: string }>;
/** A text that says what causes a defect. */
export type CauseSource = keyof typeof causeSources;

/** One statement of a text: which defect of which goods (`*`: any) has which usual cause, in the text's own words. */
export interface CauseLine {
  defects: readonly string[];
  goods: readonly string[];
  cause: DefectCauseText['cause'];
  source: CauseSource;
  quote: string;
}

const LETTUCE = ['lettuce-iceberg', 'lettuce-romaine', 'lettuce-leaf'];

export const causeLines: readonly CauseLine[] = [
  {
    defects: ['freezing', 'water-soaked'],
    goods: ['lettuce-iceberg'],
    cause: 'field',
    source: 'ucd-lettuce',
    quote: 'Freeze damage can occur in the field and cause separation of the epidermis from the leaf.',
  },
  {
    defects: ['freezing', 'water-soaked'],
    goods: ['lettuce-iceberg'],
    cause: 'freezing',
    source: 'ucd-lettuce',
    quote: 'During storage, freeze damage can occur if the lettuce is stored at at <-0.2°C (31.7°F).',
  },
  {
    defects: ['freezing', 'water-soaked'],
    goods: ['lettuce-romaine'],
    cause: 'field',
    source: 'ucd-romaine',
    quote: 'Freeze damage can occur in the field and cause separation of the epidermis from the leaf.',
  },
  {
    defects: ['freezing', 'water-soaked'],
    goods: ['lettuce-romaine'],
    cause: 'freezing',
    source: 'ucd-romaine',
    quote: 'Freeze damage can occur during storage if the lettuce is held at <-0.2°C (31.7°F).',
  },
  {
    defects: ['freezing', 'water-soaked'],
    goods: ['broccoli'],
    cause: 'freezing',
    source: 'ucd-broccoli',
    quote:
      'Frozen and thawed areas on the florets appear very dark and translucent, may discolor after thawing and are very susceptible to bacterial decay.',
  },
  {
    defects: ['chilling', 'pitting', 'water-soaked', 'decay'],
    goods: ['cucumbers'],
    cause: 'chilling',
    source: 'ucd-cucumber',
    quote: 'Consequences of chilling injury are water-soaked areas, pitting and accelerated decay.',
  },
  {
    defects: ['chilling', 'pitting', 'water-soaked'],
    goods: ['cucumbers'],
    cause: 'field',
    source: 'ucd-cucumber',
    quote: 'Chilling injury is cumulative and may be initiated in the field prior to harvest.',
  },
  {
    defects: ['chilling', 'pitting', 'decay'],
    goods: ['tomatoes-mature-green', 'tomatoes-ripe'],
    cause: 'chilling',
    source: 'horticultural-reviews-44',
    quote:
      'exhibit a range of chilling injury (CI) symptoms following exposure to low, non-freezing temperature',
  },
  {
    defects: ['decay'],
    goods: ['tomatoes-mature-green', 'tomatoes-ripe'],
    cause: 'field',
    source: 'ifas-pp294',
    quote:
      'Postharvest decay losses for field-grown, fresh-market tomatoes are usually associated with harvests that occur when fields are wet and warm',
  },
  {
    defects: ['russet-spotting'],
    goods: LETTUCE,
    cause: 'ethylene',
    source: 'ucd-lettuce',
    quote: 'Russet spotting (see physiological disorders) is the most common symptom of ethylene exposure.',
  },
  {
    defects: ['yellowing'],
    goods: ['broccoli'],
    cause: 'ethylene',
    source: 'ucd-broccoli',
    quote:
      'Broccoli is extremely sensitive to exposure to ethylene. Floret yellowing is the most common symptom.',
  },
  {
    defects: ['yellowing'],
    goods: ['celery'],
    cause: 'ethylene',
    source: 'ucd-celery',
    quote:
      'Loss of green color can result from exposure to 10 ppm or higher ethylene concentrations at above 5°C (41°F).',
  },
  {
    defects: ['yellowing'],
    goods: ['cucumbers'],
    cause: 'warm',
    source: 'australia-cucumber',
    quote: 'Temperatures 15°C and higher result in rapid yellowing and onset of disease.',
  },
  {
    defects: ['yellowing'],
    goods: ['cucumbers'],
    cause: 'ethylene',
    source: 'australia-cucumber',
    quote: 'Ethylene induces yellowing and reduces storage life.',
  },
  {
    defects: ['tipburn'],
    goods: LETTUCE,
    cause: 'field',
    source: 'uc-ipm-tipburn',
    quote: 'Tipburn is a result of calcium deficiencies in growing tissue',
  },
  {
    defects: ['tipburn'],
    goods: ['lettuce-iceberg'],
    cause: 'warm',
    source: 'phytopathology-1978',
    quote:
      'Tipburn symptoms developed on the central leaves of mature detached field-grown heads of lettuce exposed in growth chambers to 24 to 33 C for 4 to 7 days.',
  },
  {
    defects: ['brown-stain'],
    goods: LETTUCE,
    cause: 'carbon-dioxide',
    source: 'jashs-1971',
    quote:
      'almost identical to the brown stain observed in lettuce from rail cars and trailers in which CO2 concentrations exceeded 2% at destination',
  },
  {
    defects: ['gray-mold'],
    goods: ['strawberries'],
    cause: 'field',
    source: 'plant-disease-2013',
    quote:
      'the gray mold fungus which infects the berries in the field but which remains symptomless until the fruit ripens',
  },
  {
    defects: ['decay', 'gray-mold', 'yellowing'],
    goods: ['*'],
    cause: 'warm',
    source: 'ashrae-vegetables',
    quote:
      'overly high temperatures during handling, storage, and transport, which increase ripening, decay, and the loss of edible quality and nutrient values',
  },
  {
    defects: ['freezing'],
    goods: ['*'],
    cause: 'freezing',
    source: 'ashrae-vegetables',
    quote: 'Some cases may involve freezing or chilling injury from overly low temperatures.',
  },
  {
    defects: ['chilling'],
    goods: ['*'],
    cause: 'chilling',
    source: 'ashrae-vegetables',
    quote: 'Some cases may involve freezing or chilling injury from overly low temperatures.',
  },
  {
    defects: ['bruising', 'mechanical'],
    goods: ['*'],
    cause: 'handling',
    source: 'ashrae-vegetables',
    quote: 'mechanical injury from careless or rough handling',
  },
  {
    defects: ['wilting'],
    goods: ['*'],
    cause: 'drying',
    source: 'ashrae-vegetables',
    quote: 'shrinkage or wilting because of moisture loss',
  },
];

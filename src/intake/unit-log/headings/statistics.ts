/** What a column holds of the time since the row before: its mean, or an extreme, spread or sum that is no reading. */
export type Statistic = 'mean' | 'other';

/** Lower case, without accents, in the languages of the headings. */
const MEAN = [
  'avg',
  'average',
  'mean',
  'promedio',
  'media',
  'medio',
  'moyenne',
  'moyen',
  'moy',
  'mittelwert',
  'mittel',
];
const OTHER = [
  ...[
    'min',
    'minimum',
    'max',
    'maximum',
    'lowest',
    'highest',
    'low',
    'high',
    'peak',
    'median',
    'sum',
    'total',
  ],
  ...['std', 'stdev', 'stddev', 'sd', 'deviation', 'variance', 'range'],
  ...['minimo', 'minima', 'maximo', 'maxima', 'mediana', 'suma', 'desviacion'],
  ...['mini', 'maxi', 'minimale', 'maximale', 'ecart', 'niedrigste', 'hochste'],
];

const KINDS: ReadonlyMap<string, Statistic> = new Map([
  ...MEAN.map((word) => [word, 'mean'] as const),
  ...OTHER.map((word) => [word, 'other'] as const),
]);

/** The statistic that the words of a heading name, and the words without it; undefined for a plain reading. */
export function statisticIn(plain: string): { is: Statistic; of: string } | undefined {
  const words = plain.split(' ');
  const kinds = words.flatMap((word) => KINDS.get(word) ?? []);
  const [first] = kinds;
  if (first === undefined) return undefined;
  return { is: kinds.includes('other') ? 'other' : first, of: words.filter((w) => !KINDS.has(w)).join(' ') };
}

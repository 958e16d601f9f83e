import type { LogMapping } from '../../../core/model/evidence.js';
import { valuesOf } from '../headings/column-values.js';
import { columnAt } from '../headings/columns.js';
import type { FoundTable } from '../headings/find-table.js';
import { headingMeaning, plainHeading } from '../headings/meaning.js';
import { namesOtherQuantity } from '../headings/other-quantities.js';

type Only = NonNullable<LogMapping['only']>;

/** A column whose texts can say which instrument a row is of. */
export interface NameColumn {
  column: number;
  heading: string;
  /** Its heading names instruments or places; of the others only rows of one moment show it. */
  named: 'instrument' | 'place' | 'unsaid';
}

const INSTRUMENT = [
  ...[
    'sensor',
    'device',
    'logger',
    'recorder',
    'instrument',
    'probe',
    'channel',
    'serial',
    'sn',
    'node',
    'mac',
    'entity',
    'asset',
  ],
  ...['dispositivo', 'registrador', 'sonda', 'canal', 'serie', 'capteur', 'appareil', 'sonde', 'voie'],
  ...['gerat', 'fuhler', 'kanal', 'messstelle', 'seriennummer'],
];
const PLACE = [
  ...['location', 'place', 'site', 'room', 'station', 'position', 'zone', 'plot', 'fridge', 'compartment'],
  ...['ubicacion', 'lugar', 'sitio', 'zona', 'lieu', 'emplacement', 'ort', 'raum', 'standort'],
];
/** A heading with one of these names people or what happened. */
const OTHER = [
  'driver',
  'user',
  'operator',
  'alarm',
  'event',
  'trip',
  'status',
  'message',
  'customer',
  'file',
];

/** The columns that are read for nothing else and may name the instrument of each row. */
export function nameColumns({ headings, columns, sample }: FoundTable): NameColumn[] {
  const used = new Set([
    ...columns.time,
    ...(columns.parts?.columns ?? []),
    ...columns.channels.map((c) => c.column),
    ...columns.states.map((s) => s.column),
  ]);
  return headings.flatMap((heading, column) => {
    if (used.has(column)) return [];
    const texts = new Set(sample.map((row) => (row[column] ?? '').trim()));
    // Every row another text: a number of the row, a remark.
    if (sample.length > 1 && texts.size === sample.length) return [];
    const { filled, clocks, dates } = valuesOf(sample, column);
    if (filled > 0 && clocks + dates >= filled) return [];
    return [{ column, heading, named: namedBy(heading) }];
  });
}

function namedBy(heading: string): NameColumn['named'] {
  const plain = plainHeading(heading);
  const words = plain.split(' ').flatMap((word) => [word, word.replace(/s$/, '')]);
  if (words.some((word) => OTHER.includes(word))) return 'unsaid';
  if (words.some((word) => INSTRUMENT.includes(word)) || plain === 'name' || plain === 'id')
    return 'instrument';
  return words.some((word) => PLACE.includes(word)) ? 'place' : 'unsaid';
}

/**
 * The rows to read of a table whose rows hold one quantity each: those whose text says temperature, where the others
 * say humidity, pressure or the like. Undefined for any other table.
 */
export function onlyTemperatures(table: FoundTable): Only | undefined {
  const [value, other] = table.columns.channels;
  if (value === undefined || other !== undefined) return undefined;
  if (headingMeaning(table.headings[value.column] ?? '')?.ofTemperature === true) return undefined;
  for (const { column } of nameColumns(table)) {
    const texts = [...new Set(table.sample.map((row) => (row[column] ?? '').trim()))].filter(
      (text) => text !== '',
    );
    const temperatures = texts.filter((text) => headingMeaning(text)?.ofTemperature === true);
    const others = texts.filter((text) => namesOtherQuantity(plainHeading(text)));
    const [only, second] = temperatures;
    if (only !== undefined && second === undefined && others.length > 0) return [{ column, is: only }];
  }
  return undefined;
}

/** The rows that a person chose, with the columns that the headings name; undefined for a column that is not there. */
export function chosenRows(
  chosen: readonly { column: string | number; is: string }[],
  headings: readonly string[],
): Only | undefined {
  const found = chosen.flatMap(({ column, is }) => {
    const at = columnAt(headings, column);
    return at === undefined ? [] : [{ column: at, is: is.trim() }];
  });
  return found.length === chosen.length ? found : undefined;
}

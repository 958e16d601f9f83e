import type { Compartment } from '../../../core/model/compartment.js';
import { channel, stateColumn } from '../../../core/model/evidence.js';
import { omitUndefined } from '../../../core/model/omit-undefined.js';
import { withoutAccents } from '../../time/months.js';
import { valuesOf } from './column-values.js';
import { type ColumnName, type Columns, columnAt } from './columns.js';
import type { FoundTable } from './find-table.js';
import { guessColumns } from './guess.js';
import { type HeadingReading, headingMeaning } from './meaning.js';

/** A column that delivery.yaml names, and that a log lacks. */
export interface MissingColumn {
  compartment: string;
  means: string;
  column: ColumnName;
}

/** The columns of a table, those of one compartment marked with it. */
export interface CompartmentTable {
  columns: Columns;
  /** Columns that delivery.yaml names for a log that has others of them. */
  missing: MissingColumn[];
}

/**
 * Gives each compartment its columns: those that delivery.yaml names, else those whose headings bear its number, counted
 * from the front wall, or its name. A table that names no compartment stays as it is.
 */
export function compartmentColumns(
  { headings, sample, columns }: Pick<FoundTable, 'headings' | 'sample' | 'columns'>,
  compartments: readonly Compartment[],
): CompartmentTable {
  if (compartments.length === 0) return { columns, missing: [] };
  const named = compartments.map((one) => namedColumns(headings, one));
  const anyNamed = named.some(({ found }) => found.length > 0);
  const taken = new Set(named.flatMap(({ found }) => found.map(({ column }) => column)));
  const said = headings.map((heading, column) =>
    taken.has(column) || columns.time.includes(column) ? undefined : readHeading(heading, compartments),
  );
  const marked = compartments.flatMap(({ id }, index) => [
    ...(named[index]?.found ?? []),
    ...guessed(said, sample, index)
      .filter(({ means }) => named[index]?.found.every((one) => one.means !== means))
      .map((one) => ({ ...one, compartment: id })),
  ]);
  // One compartment alone in the headings is as likely the first of several instruments as one of the trailer's.
  const several = new Set(marked.map(({ compartment }) => compartment)).size > 1 || anyNamed;
  if (!several) return { columns, missing: [] };
  const own = new Set(marked.map(({ column }) => column));
  const meaning = (name: string) => marked.filter(({ means }) => means === name);
  return {
    columns: {
      time: columns.time,
      ...omitUndefined({ parts: columns.parts, dated: columns.dated }),
      channels: [
        ...columns.channels.filter(({ column }) => !own.has(column)),
        ...channel.options.flatMap((name) =>
          meaning(name).map(({ column, compartment }) => ({ channel: name, column, compartment })),
        ),
      ],
      states: [
        ...columns.states.filter(({ column }) => !own.has(column)),
        ...stateColumn.options.flatMap((name) =>
          meaning(name).map(({ column, compartment }) => ({ state: name, column, compartment })),
        ),
      ],
      unused: columns.unused.filter(
        (heading) => !marked.some(({ column }) => headings[column]?.trim() === heading),
      ),
    },
    missing: anyNamed ? named.flatMap(({ missing }) => missing) : [],
  };
}

interface Marked {
  means: string;
  column: number;
  compartment: string;
}

function namedColumns(
  headings: readonly string[],
  { id, columns = {} }: Compartment,
): { found: Marked[]; missing: MissingColumn[] } {
  const found: Marked[] = [];
  const missing: MissingColumn[] = [];
  for (const [means, name] of Object.entries(columns)) {
    if (name === undefined) continue;
    const column = columnAt(headings, name);
    if (column === undefined) missing.push({ compartment: id, means, column: name });
    else found.push({ means, column, compartment: id });
  }
  return { found, missing };
}

interface OfCompartment {
  index: number;
  reading: HeadingReading;
}

/** The compartment of a heading, and what the rest of it means. */
function readHeading(heading: string, compartments: readonly Compartment[]): OfCompartment | undefined {
  const text = withoutAccents(heading).toLowerCase();
  const numbered = NUMBERED.exec(text);
  if (numbered !== null) {
    const [whole, number = ''] = numbered;
    const index = Number(number) - 1;
    const reading =
      index < compartments.length ? headingMeaning(cut(heading, numbered.index, whole)) : undefined;
    return reading === undefined ? undefined : { index, reading };
  }
  for (const [index, { id }] of compartments.entries()) {
    const at = new RegExp(`(?<![a-z0-9])${id.toLowerCase().replaceAll('-', '[ -]?')}(?![a-z0-9])`).exec(text);
    const reading = at === null ? undefined : headingMeaning(cut(heading, at.index, at[0]));
    if (reading !== undefined) return { index, reading };
  }
  const reading = headingMeaning(heading);
  // The number of a probe is its own; that of the air and of its set point is a compartment's.
  if (reading?.number === undefined || reading.means === 'probe' || reading.number > compartments.length)
    return undefined;
  return { index: reading.number - 1, reading: omitNumber(reading) };
}

/** `Zone 2`, `Compartimento 2`, `Comp. 2`, `Z2`. */
const NUMBERED =
  /(?<![a-z])(?:zone|zona|compartment|compartimento|compartiment|comp\.?|chamber|camara|chambre|kammer|box|z|c)[ _-]*([1-6])(?![0-9])/;

const cut = (heading: string, at: number, part: string) =>
  `${heading.slice(0, at)} ${heading.slice(at + part.length)}`.trim();

const omitNumber = ({ number: _number, ...reading }: HeadingReading): HeadingReading => reading;

function guessed(
  said: readonly (OfCompartment | undefined)[],
  sample: readonly (readonly string[])[],
  index: number,
): Omit<Marked, 'compartment'>[] {
  const own = said.map((one) => (one?.index === index ? one.reading : undefined));
  const taken = guessColumns(
    own,
    (column) => valuesOf(sample, column),
    () => false,
  );
  return [...taken].flatMap(([means, { column }]) =>
    ['time', 'date', 'clock'].includes(means) ? [] : [{ means, column }],
  );
}

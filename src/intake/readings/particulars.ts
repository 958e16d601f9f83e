import {
  instrumentType,
  particular,
  particularSubject,
  type ReadingBody,
} from '../../core/model/evidence.js';
import { omitUndefined } from '../../core/model/omit-undefined.js';
import {
  type Cells,
  chosen,
  howMuchIn,
  missing,
  papersIn,
  short,
  signatoriesIn,
  temperatureIn,
} from './cells.js';
import { type ReadingColumn, UnreadableRow } from './columns.js';

type Instrument = Extract<ReadingBody, { kind: 'instrument' }>;
type Common = Pick<Instrument, 'time' | 'place' | 'line' | 'by' | 'caption'>;

const textIn = (cells: Cells, column: ReadingColumn, most: number) => {
  const said = cells.get(column);
  return said === undefined ? undefined : short(said, column, most);
};

/** A thermometer, recorder, sensor or controller: its name in `value`, what it is in `type`. */
export function readInstrument(common: Common, cells: Cells): ReadingBody {
  const [owner] = signatoriesIn(cells, 'owner');
  return {
    kind: 'instrument',
    ...common,
    name: textIn(cells, 'value', 60) ?? missing('value', 'its name or number'),
    type: chosen(cells, 'type', instrumentType) ?? missing('type', instrumentType.options.join(', ')),
    ...papersIn(cells),
    ...omitUndefined({
      owner,
      serial: textIn(cells, 'serial', 60),
      where: textIn(cells, 'where', 200),
      accuracy: textIn(cells, 'accuracy', 60),
      certificate: textIn(cells, 'certificate', 200),
      calibrated: dayIn(cells, 'calibrated'),
      serviced: dayIn(cells, 'serviced'),
      software: textIn(cells, 'software', 100),
      iceBefore: temperatureIn(cells, 'ice-before'),
      iceAfter: temperatureIn(cells, 'ice-after'),
    }),
  };
}

function dayIn(cells: Cells, column: 'calibrated' | 'serviced'): string | undefined {
  const text = cells.get(column);
  if (text === undefined || /^\d{4}-\d{2}-\d{2}$/.test(text)) return text;
  throw new UnreadableRow(`"${text.slice(0, 60)}" is not a day`, column, 'write it like 2026-05-01');
}

const COLUMN_OF: Readonly<Record<string, ReadingColumn>> = { who: 'with', quantity: 'value', words: 'note' };

/** A particular: what it is of in `subject`, who in `with`, how many in `value`, what is stated in `note`. */
export function readParticular(common: Common, cells: Cells): ReadingBody {
  const [who] = signatoriesIn(cells, 'with');
  const body = {
    kind: 'particular' as const,
    ...common,
    of:
      chosen(cells, 'subject', particularSubject) ?? missing('subject', particularSubject.options.join(', ')),
    ...papersIn(cells),
    ...omitUndefined({ who, quantity: howMuchIn(cells).quantity, words: textIn(cells, 'note', 2000) }),
  };
  const read = particular.safeParse({ ...body, evidence: 'e1', source: { is: 'typed' } });
  if (read.success) return body;
  const [issue] = read.error.issues;
  throw new UnreadableRow(issue?.message ?? 'not understood', COLUMN_OF[String(issue?.path[0])] ?? 'subject');
}

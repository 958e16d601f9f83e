import type { z } from 'zod';
import { type Delivery, runMode } from '../../core/model/delivery.js';
import {
  airBlock,
  bracing,
  contact,
  contactSubject,
  eventName,
  outcomeHow,
  outcomeReason,
  outcomeTold,
  outcomeVerdict,
  type Place,
  position,
  type ReadingBody,
  readingFrom,
  readingKind,
  rowPattern,
  type Signatory,
  seal,
  setPointSource,
  stopReason,
} from '../../core/model/evidence.js';
import { omitUndefined } from '../../core/model/omit-undefined.js';
import type { EventTime } from '../../core/model/time.js';
import { roleOfName } from '../roles.js';
import type { DateOrder } from '../time/wall-time.js';
import {
  type Cells,
  chosen,
  chosenRole,
  fuelIn,
  howMuchIn,
  known,
  listIn,
  missing,
  papersIn,
  refuse,
  rowsIn,
  short,
  signatoriesIn,
  temperatureIn,
} from './cells.js';
import type { ReadingColumn, RowNote } from './columns.js';
import { palletsIn, palletWeightIn, scaleIn, shockIn } from './handling.js';
import { readInspection } from './inspection.js';
import { readInstrument, readParticular } from './particulars.js';
import { readRowTime } from './time.js';

/** Parses one row. Throws UnreadableRow with the column at fault. */
export function readReadingRow(
  cells: Cells,
  delivery: Delivery,
  order: DateOrder | undefined,
): { reading: ReadingBody; notes: RowNote[] } {
  const called = kindIn(cells);
  const stop = known(
    cells,
    'stop',
    delivery.stops.map((s) => s.id),
  );
  const line = known(
    cells,
    'line',
    delivery.lines.map((l) => l.id),
  );
  const kind = called === 'exception' ? exceptionAt(stop, delivery) : called;
  const compartment = known(
    cells,
    'compartment',
    (delivery.equipment.trailer.compartments ?? []).map(({ id }) => id),
  );
  const part = chosen(cells, 'position', position);
  const by = cells.get('by');
  const { time, notes } = readRowTime(cells.get('time'), delivery, stop, order);
  const place: Place = {
    ...omitUndefined({ stop, position: part, compartment }),
  };
  const common = {
    time,
    ...omitUndefined({
      place: Object.keys(place).length === 0 ? undefined : place,
      line,
      by: by === undefined ? undefined : short(by, 'by', 200),
    }),
  };
  const timeIn = (column: ReadingColumn) => {
    const text = cells.get(column);
    return text === undefined ? undefined : readRowTime(text, delivery, stop, order).time;
  };
  return { reading: readingOf(kind, common, cells, timeIn), notes };
}

/** Kinds in a table: a unit check is stored as `round`, and that word is accepted too. */
const KINDS = { options: readingKind.options.map((kind) => (kind === 'round' ? 'check' : kind)) };

function kindIn(cells: Cells): z.infer<typeof readingKind> {
  if (cells.get('kind')?.toLowerCase() === 'round') return 'round';
  const kind = chosen(cells, 'kind', KINDS) ?? missing('kind', `one of ${KINDS.options.join(', ')}`);
  return kind === 'check' ? 'round' : kind;
}

/** At loading the carrier makes an exception on the bill of lading; at delivery the receiver does, which is an outcome. */
function exceptionAt(stop: string | undefined, { stops }: Delivery): 'exception' | 'outcome' {
  const does = stops.find(({ id }) => id === stop)?.does ?? missing('stop', 'where the exception was made');
  return does === 'load' ? 'exception' : 'outcome';
}

type Common = Pick<ReadingBody, 'time' | 'place' | 'line' | 'by'>;

function readingOf(
  kind: z.infer<typeof readingKind>,
  common: Common,
  cells: Cells,
  timeIn: (column: ReadingColumn) => EventTime | undefined,
): ReadingBody {
  const note = cells.get('note');
  const captioned = {
    ...common,
    ...omitUndefined({ caption: note === undefined ? undefined : short(note, 'note', 2000) }),
  };
  const noted = {
    ...common,
    ...omitUndefined({ note: note === undefined ? undefined : short(note, 'note', 2000) }),
  };
  const named = (column: ReadingColumn) => {
    const said = cells.get(column);
    return said === undefined ? undefined : short(said, column, 200);
  };
  const run = chosen(cells, 'run', runMode);
  switch (kind) {
    case 'pulp': {
      const instrument = cells.get('instrument');
      return {
        kind,
        ...captioned,
        temperature: temperatureIn(cells, 'value') ?? missing('value', 'a temperature'),
        from:
          chosenRole(cells, 'from', readingFrom) ??
          roleOfName(cells.get('by') ?? '', readingFrom.options) ??
          'driver',
        ...omitUndefined({
          instrument: instrument === undefined ? undefined : short(instrument, 'instrument', 100),
        }),
      };
    }
    case 'set-point':
      return {
        kind,
        ...captioned,
        temperature: temperatureIn(cells, 'value') ?? missing('value', 'a temperature'),
        shownBy: chosen(cells, 'from', setPointSource) ?? 'display',
        ...omitUndefined({ run }),
      };
    case 'round': {
      const boxAir = temperatureIn(cells, 'value');
      const setPoint = temperatureIn(cells, 'set-point');
      const fuel = fuelIn(cells);
      return {
        kind,
        ...captioned,
        ...omitUndefined({ boxAir, setPoint, fuel }),
        alarms: (cells.get('alarms') ?? '')
          .split(/[;|]/)
          .map((alarm) => alarm.trim())
          .filter((alarm) => alarm !== '')
          .map((alarm) => short(alarm, 'alarms', 200)),
      };
    }
    case 'seal':
      return {
        kind,
        ...captioned,
        number: short(cells.get('value') ?? missing('value', 'the seal number'), 'value', 60),
        state:
          chosen(cells, 'state', seal.shape.state) ?? missing('state', seal.shape.state.options.join(', ')),
      };
    case 'bracing':
      return {
        kind,
        ...noted,
        device:
          chosen(cells, 'value', bracing.shape.device) ??
          missing('value', bracing.shape.device.options.join(', ')),
      };
    case 'pattern':
      return {
        kind,
        ...noted,
        pattern: chosen(cells, 'value', rowPattern) ?? missing('value', rowPattern.options.join(', ')),
        rows: rowsIn(cells),
        ...omitUndefined({ palletWeight: palletWeightIn(cells) }),
        blocks: (cells.get('blocks') ?? '')
          .split(/[;|]/)
          .map((one) => one.trim())
          .filter((one) => one !== '')
          .map((one) => chosen(new Map([['blocks', one]]), 'blocks', airBlock) ?? refuse(one, 'blocks', [])),
      };
    case 'scale':
      return { kind, ...captioned, ...scaleIn(cells) };
    case 'shock':
      return { kind, ...captioned, ...shockIn(cells) };
    case 'pallets':
      return { kind, ...noted, ...palletsIn(cells) };
    case 'event':
      return {
        kind,
        ...noted,
        event:
          chosen(cells, 'event', eventName) ??
          chosen(cells, 'value', eventName) ??
          missing('event', 'what happened'),
        ...omitUndefined({ reason: chosen(cells, 'reason', stopReason) }),
      };
    case 'outcome':
      return {
        kind,
        ...common,
        outcome: verdictIn(cells),
        ...howMuchIn(cells),
        reasons: listIn(cells, 'reason', outcomeReason),
        ...papersIn(cells),
        ...omitUndefined({
          words: note === undefined ? undefined : short(note, 'note', 2000),
          ...signaturesIn(cells),
          saidBy: named('said-by'),
          told: chosen(cells, 'with', outcomeTold),
          toldName: named('with-name'),
          how: chosen(cells, 'how', outcomeHow),
        }),
      };
    case 'instrument':
      return readInstrument(captioned, cells);
    case 'particular':
      return readParticular(common, cells);
    case 'inspection':
      return readInspection(captioned, cells, timeIn);
    case 'exception': {
      const { quantity } = howMuchIn(cells);
      const { writtenBy, signedBy = [] } = signaturesIn(cells);
      return {
        kind,
        ...common,
        words: short(note ?? missing('note', 'the words on the paper'), 'note', 2000),
        reasons: listIn(cells, 'reason', outcomeReason),
        signedBy,
        ...papersIn(cells),
        ...omitUndefined({ quantity, writtenBy }),
      };
    }
    case 'contact': {
      const subjects = listIn(cells, 'subject', contactSubject);
      return {
        kind,
        ...common,
        ...omitUndefined({ subjects: subjects.length === 0 ? undefined : subjects }),
        with:
          chosenRole(cells, 'with', contact.shape.with) ??
          chosenRole(cells, 'value', contact.shape.with) ??
          missing('with', 'who was told'),
        ...omitUndefined({ withName: named('with-name') }),
        how: chosen(cells, 'how', contact.shape.how) ?? missing('how', contact.shape.how.options.join(', ')),
        about: short(note ?? 'not stated', 'note', 2000),
      };
    }
    case 'statement':
      return {
        kind,
        ...(cells.has('value') ? captioned : common),
        text: short(cells.get('value') ?? note ?? missing('note', 'what the person says'), 'note', 20_000),
      };
  }
}

function verdictIn(cells: Cells): z.infer<typeof outcomeVerdict> {
  if (cells.get('kind')?.toLowerCase() === 'exception') return 'accepted-with-exceptions';
  return chosen(cells, 'state', outcomeVerdict) ?? missing('state', outcomeVerdict.options.join(', '));
}

/** Who wrote an exception and who signed it; left out where the row does not say. */
function signaturesIn(cells: Cells): { writtenBy?: Signatory; signedBy?: Signatory[] } {
  const [writtenBy] = signatoriesIn(cells, 'written-by');
  const signedBy = signatoriesIn(cells, 'signed-by');
  return omitUndefined({ writtenBy, signedBy: signedBy.length === 0 ? undefined : signedBy });
}

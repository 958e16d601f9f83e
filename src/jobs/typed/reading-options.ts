import { DossierError } from '../../core/model/error.js';
import {
  contact,
  contactSubject,
  type ReadingFrom,
  type ReadingKind,
  readingFrom,
  stopReason,
} from '../../core/model/evidence.js';
import { parseRowSpan } from '../../core/model/row-span.js';
import { parseTemperature } from '../../core/model/temperature.js';
import { roleOf, roleOfName } from '../../intake/roles.js';
import { exceptionBody } from './exception-options.js';
import { palletsBody, scaleBody, shockBody, typedWeight } from './handling-options.js';
import { inspectionBody } from './inspection-options.js';
import { outcomeBody } from './outcome-options.js';
import { instrumentFields, particularBody } from './particular-options.js';
import { unknownWord } from './place-options.js';
import type { TypedFields } from './typed-fields.js';

/**
 * The fields of each kind, before its schema checks them. Throws DossierError `bad-value` for a temperature, a fuel
 * level or rows that can't be understood.
 */
export function readingBody(
  kind: ReadingKind,
  word: string | undefined,
  typed: TypedFields,
): Record<string, unknown> {
  switch (kind) {
    case 'pulp':
      return {
        temperature: degrees(word, 'temperature'),
        from:
          typed.from === undefined
            ? takenBy(typed.by)
            : (roleOf(typed.from, readingFrom.options) ?? typed.from),
        instrument: typed.instrument,
      };
    case 'set-point':
      return {
        temperature: degrees(word, 'temperature'),
        shownBy: typed.shownBy ?? 'display',
        run: typed.run,
      };
    case 'round':
      if ([word, typed.setPoint, typed.fuel, typed.alarm].every((said) => said === undefined))
        throw new DossierError('bad-value', 'a look at the unit that says nothing', {
          fix: 'Give the air in the box (37F), --set-point, --fuel or --alarm.',
        });
      return {
        boxAir: word === undefined ? undefined : degrees(word, 'box air'),
        setPoint: typed.setPoint === undefined ? undefined : degrees(typed.setPoint, '--set-point'),
        fuel: typed.fuel === undefined ? undefined : fraction(typed.fuel),
        alarms: typed.alarm,
      };
    case 'seal':
      return { number: word, state: typed.state };
    case 'bracing':
      return { device: word, note: typed.note };
    case 'pattern':
      return {
        pattern: word,
        rows: rowSpan(typed.rows),
        palletWeight: typedWeight(typed.palletWeight, '--pallet-weight'),
        blocks: typed.blocks,
        note: typed.note,
      };
    case 'scale':
      return scaleBody(word, typed);
    case 'shock':
      return shockBody(word, typed);
    case 'pallets':
      return palletsBody(word, typed);
    case 'event':
      return { event: word, note: typed.note, reason: stopReasonOf(typed.reason) };
    case 'outcome':
      return outcomeBody(word, typed);
    case 'inspection':
      return inspectionBody(word, typed);
    case 'instrument':
      return instrumentFields(word, typed);
    case 'particular':
      return particularBody(word, typed);
    case 'exception':
      return exceptionBody(word, typed);
    case 'contact':
      return {
        with: word === undefined ? undefined : (roleOf(word, contact.shape.with.options) ?? word),
        withName: typed.withName,
        how: typed.how ?? 'call',
        about: typed.about,
        subjects: subjectsOf(typed.subject),
        notice: typed.notice,
      };
    case 'statement':
      return { text: word, about: typed.about };
  }
}

/** Why a truck stopped; undefined where none is typed. Throws DossierError `bad-value` for another word. */
function stopReasonOf(typed: TypedFields['reason']): string | undefined {
  const [said] = typed === undefined ? [] : [typed].flat();
  const word = said?.trim().toLowerCase().replaceAll(' ', '-');
  if (word !== undefined && !stopReason.options.some((one) => one === word))
    throw unknownWord('reason', said ?? '', stopReason.options);
  return word;
}

/** `pulp-temperatures, delay`; undefined where none is typed. Throws DossierError `bad-value` for another word. */
function subjectsOf(typed: TypedFields['subject']): string[] | undefined {
  const said = typed === undefined ? [] : [typed].flat().flatMap((one) => one.split(/[,;]/));
  const words = said.map((one) => one.trim().toLowerCase().replaceAll(' ', '-')).filter((one) => one !== '');
  for (const word of words)
    if (!contactSubject.options.some((subject) => subject === word))
      throw unknownWord('subject', word, contactSubject.options, '--subject');
  return words.length === 0 ? undefined : [...new Set(words)];
}

/** A reading `by receiver` is the receiver's, not the driver's. */
const takenBy = (by: string | undefined): ReadingFrom | undefined =>
  by === undefined ? undefined : roleOfName(by, readingFrom.options);

function degrees(text: string | undefined, field: string) {
  const read = text === undefined ? undefined : parseTemperature(text);
  if (read === undefined && text !== undefined && /^\s*[+\-−]?\d+(?:[.,]\d+)?\s*°?\s*$/.test(text)) {
    const bare = text.replace('°', '').trim();
    throw new DossierError('bad-value', `nothing says whether ${bare} is in °F or °C`, {
      where: { field },
      fix: `Write ${bare}F or ${bare}C.`,
      choices: [`${bare}F`, `${bare}C`],
    });
  }
  if (read === undefined)
    throw new DossierError('bad-value', `"${text ?? ''}" is not a temperature that air or produce can have`, {
      where: { field },
      fix: 'Write the number with its unit, such as 34.2F or 1.2C (−80 to 85 °C, −112 to 185 °F).',
    });
  return read;
}

function rowSpan(text: string | undefined) {
  const read = text === undefined ? undefined : parseRowSpan(text);
  if (read === undefined)
    throw new DossierError('bad-value', text === undefined ? 'not told' : `"${text}" are not rows`, {
      where: { field: '--rows' },
      fix: 'Count from the nose and write them like 1-13 or 4.',
    });
  return read;
}

/** `3/4`, `75%` or `0.75` of a tank. */
function fraction(text: string): number {
  const parts = /^(\d+)\s*\/\s*(\d+)$/.exec(text);
  const percent = /^(\d+(?:\.\d+)?)\s*%$/.exec(text);
  const value =
    parts !== null
      ? Number(parts[1]) / Number(parts[2])
      : percent !== null
        ? Number(percent[1]) / 100
        : /^[01](?:\.\d+)?$/.test(text)
          ? Number(text)
          : Number.NaN;
  if (!(value >= 0 && value <= 1))
    throw new DossierError('bad-value', `"${text}" is not a part of a tank`, {
      where: { field: '--fuel' },
      fix: 'Write it like 3/4, 60% or 0.6.',
    });
  return value;
}

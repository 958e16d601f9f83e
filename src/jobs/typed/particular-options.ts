import { DossierError } from '../../core/model/error.js';
import { instrumentType, particularSubject } from '../../core/model/evidence.js';
import { parseTemperature } from '../../core/model/temperature.js';
import { howMuch, typedPapers } from './outcome-options.js';
import { unknownWord } from './place-options.js';
import { signatoryOf } from './signatory-options.js';
import type { TypedFields } from './typed-fields.js';

/** The fields of a particular, before its schema checks them. Throws DossierError `bad-value`. */
export function particularBody(word: string | undefined, typed: TypedFields): Record<string, unknown> {
  const subject = word?.trim().toLowerCase().replaceAll(' ', '-');
  if (subject === undefined || !particularSubject.options.some((one) => one === subject))
    throw unknownWord('particular', word ?? '', particularSubject.options, 'particular');
  return {
    of: subject,
    words: typed.words,
    who: typed.who === undefined ? undefined : signatoryOf(typed.who, '--who'),
    quantity: howMuch(typed.howMany).quantity,
    ...typedPapers(typed.on),
  };
}

/** The fields of an instrument, before its schema checks them. Throws DossierError `bad-value`. */
export function instrumentFields(word: string | undefined, typed: TypedFields): Record<string, unknown> {
  const type = typed.type?.trim().toLowerCase();
  if (type !== undefined && !instrumentType.options.some((one) => one === type))
    throw unknownWord('type', typed.type ?? '', instrumentType.options);
  const { serial, where, accuracy, certificate, software } = typed;
  return {
    name: word,
    type,
    serial,
    owner: typed.owner === undefined ? undefined : signatoryOf(typed.owner, '--owner'),
    where,
    accuracy,
    certificate,
    calibrated: day(typed.calibrated, '--calibrated'),
    serviced: day(typed.serviced, '--serviced'),
    software,
    iceBefore: inIce(typed.iceBefore, '--ice-before'),
    iceAfter: inIce(typed.iceAfter, '--ice-after'),
    ...typedPapers(typed.on),
  };
}

function day(text: string | undefined, field: string): string | undefined {
  if (text === undefined || /^\d{4}-\d{2}-\d{2}$/.test(text)) return text;
  throw new DossierError('bad-value', `"${text}" is not a day`, {
    where: { field },
    fix: 'Write it like 2026-05-01.',
  });
}

function inIce(text: string | undefined, field: string) {
  if (text === undefined) return undefined;
  const read = parseTemperature(text);
  if (read !== undefined) return read;
  throw new DossierError('bad-value', `"${text}" is not a temperature with its unit`, {
    where: { field },
    fix: 'Write what it showed in ice water, such as 32.4F or 0.2C.',
  });
}

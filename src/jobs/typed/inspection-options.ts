import type { Delivery, Stop } from '../../core/model/delivery.js';
import { DossierError } from '../../core/model/error.js';
import { evidenceId } from '../../core/model/evidence.js';
import { parseTradeQuantity, tradeUnit } from '../../core/model/quantity.js';
import {
  parseDefect,
  parseShares,
  parseTemperatureRange,
  splitDefects,
} from '../../intake/inspection-words.js';
import { typedTime } from './place-options.js';
import type { TypedFields } from './typed-fields.js';

/** The fields of an inspection certificate, before its schema checks them. Throws DossierError `bad-value`. */
export function inspectionBody(lot: string | undefined, typed: TypedFields): Record<string, unknown> {
  return {
    lot,
    count: quantity(typed.count, '--count'),
    samples: typed.samples === undefined ? undefined : wholeNumber(typed.samples, '--samples'),
    defects: typed.defect === undefined ? undefined : defects(typed.defect),
    total: typed.total === undefined ? undefined : total(typed.total),
    pulps: typed.pulps === undefined ? undefined : pulps(typed.pulps),
    certificate: typed.certificate,
    appeal: typed.appeal,
    where: typed.where,
    requestedBy: typed.requestedBy,
    dumped: quantity(typed.dumped, '--dumped'),
    noCommercialValue: typed.worthless,
    certifiedBy: typed.certifiedBy,
    marks: typed.marks,
    shipper: typed.shipper,
    documents: typed.on === undefined ? undefined : [onFile(typed.on)],
  };
}

/** The other times of an inspection, local to its stop. */
export function inspectionTimes(
  { ended, requestedAt }: TypedFields,
  delivery: Delivery,
  stop: Stop | undefined,
  now: Date,
): Record<string, unknown> {
  const time = (typed: string | undefined, field: string) =>
    typed === undefined ? undefined : typedTime(typed, delivery, stop, now, field);
  return { ended: time(ended, '--ended'), requestedAt: time(requestedAt, '--requested-at') };
}

function defects(typed: string | readonly string[]) {
  return [typed]
    .flat()
    .flatMap(splitDefects)
    .map((text) => {
      const read = parseDefect(text);
      if (read === undefined)
        throw new DossierError('bad-value', `"${text}" is not a defect with its percentage`, {
          where: { field: '--defect' },
          fix: 'Write the name and the percentage, such as "tipburn 8% serious 3%" or "seedstems 4% permanent".',
        });
      return read;
    });
}

function total(typed: string) {
  const read = parseShares(typed);
  if (read === undefined)
    throw new DossierError('bad-value', `"${typed}" is not a total`, {
      where: { field: '--total' },
      fix: 'Write the percentages, such as "15% serious 9%".',
    });
  return read;
}

function pulps(typed: string) {
  const read = parseTemperatureRange(typed);
  if (read === undefined)
    throw new DossierError('bad-value', `"${typed}" are not temperatures`, {
      where: { field: '--pulps' },
      fix: 'Write the lowest and the highest with their unit, such as "41F to 44F".',
    });
  return read;
}

function quantity(typed: string | undefined, field: string) {
  if (typed === undefined) return undefined;
  const read = parseTradeQuantity(typed);
  if (read === undefined)
    throw new DossierError('bad-value', `"${typed}" is not a quantity with its unit`, {
      where: { field },
      fix: `Write it like "480 cartons"; units are ${tradeUnit.options.join(', ')}.`,
    });
  return read;
}

function wholeNumber(typed: string, field: string): number {
  if (!/^\d{1,6}$/.test(typed.trim()))
    throw new DossierError('bad-value', `"${typed}" is not a count`, {
      where: { field },
      fix: 'Write a whole number, such as 12.',
    });
  return Number(typed);
}

function onFile(typed: string) {
  const id = evidenceId.safeParse(typed);
  if (!id.success)
    throw new DossierError('bad-value', `"${typed}" is not evidence of this delivery`, {
      where: { field: '--on' },
      fix: 'Take the certificate in with dossier collect, and name it by its evidence, such as e31.',
    });
  return id.data;
}

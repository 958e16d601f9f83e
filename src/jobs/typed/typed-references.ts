import { DossierError } from '../../core/model/error.js';
import type { ReferenceKind } from '../../core/model/references.js';

/** What the numbers are called on papers of the trade. */
const CALLED: Readonly<Record<string, ReferenceKind>> = {
  bol: 'billOfLading',
  'bill of lading': 'billOfLading',
  pro: 'pro',
  po: 'purchaseOrder',
  'purchase order': 'purchaseOrder',
  load: 'load',
  trailer: 'trailer',
  seal: 'seal',
  claim: 'claim',
  lot: 'lot',
  driver: 'driver',
};
const NAMES = Object.keys(CALLED).toSorted((a, b) => b.length - a.length);

type Numbers = Partial<Record<ReferenceKind, string | string[]>>;

/**
 * Typed references by stop; those of the whole delivery are under the empty name. Several of one kind are kept in order.
 * Throws DossierError `bad-usage` for one that is not understood, or of an unknown stop.
 */
export function typedReferences(typed: readonly string[], stops: readonly string[]): Map<string, Numbers> {
  const found = new Map<string, Numbers>();
  for (const text of typed) {
    const { stop, kind, number } = parseReference(text, stops);
    const numbers = found.get(stop) ?? {};
    const had = numbers[kind];
    numbers[kind] = had === undefined ? number : [...(typeof had === 'string' ? [had] : had), number];
    found.set(stop, numbers);
  }
  return found;
}

function parseReference(
  text: string,
  stops: readonly string[],
): { stop: string; kind: ReferenceKind; number: string } {
  const [, named = '', rest = ''] = /^\s*(?:([a-z0-9-]+)\s*:)?\s*(.*?)\s*$/i.exec(text) ?? [];
  const stop = named === '' ? '' : stops.find((id) => id.toLowerCase() === named.toLowerCase());
  if (stop === undefined)
    throw new DossierError('bad-usage', `${text}: there is no stop "${named}"`, {
      where: { field: '--ref' },
      fix: `Use one of: ${stops.join(', ')}.`,
    });
  const name = NAMES.find((one) => new RegExp(`^${one}[\\s=#]`, 'i').test(rest));
  const kind = name === undefined ? undefined : CALLED[name];
  const number = rest.slice(name?.length ?? 0).replace(/^[\s=#]+/, '');
  if (kind === undefined || number === '')
    throw new DossierError('bad-usage', `"${text}" is not a reference`, {
      where: { field: '--ref' },
      fix: `Write it like "bol 0044719", or of one stop "drop-1: po 8812"; kinds are ${Object.keys(CALLED).join(', ')}.`,
    });
  return { stop, kind, number };
}

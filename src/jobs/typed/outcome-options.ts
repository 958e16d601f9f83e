import type { Delivery, Line, Stop } from '../../core/model/delivery.js';
import { DossierError } from '../../core/model/error.js';
import { evidenceId, outcomeReason } from '../../core/model/evidence.js';
import { parseTradeQuantity, type TradeQuantity, tradeUnit } from '../../core/model/quantity.js';
import { unknownWord } from './place-options.js';
import { signatures } from './signatory-options.js';
import type { TypedFields } from './typed-fields.js';

/** The fields of an outcome, before its schema checks them. Throws DossierError `bad-value`. */
export function outcomeBody(word: string | undefined, typed: TypedFields): Record<string, unknown> {
  const { outcome, rest, words, saidBy, told, toldName, how } = typed;
  return {
    outcome,
    ...howMuch(word),
    rest,
    reasons: reasonsOf(typed.reason),
    words,
    saidBy,
    ...signatures(typed),
    told,
    toldName,
    how,
    ...typedPapers(typed.on),
  };
}

/** The paper that a reading stands on: evidence by its id, or the paper in words. */
export function typedPapers(on: string | undefined): Record<string, unknown> {
  const paper = on === undefined ? undefined : evidenceId.safeParse(on.trim().toLowerCase());
  return {
    documents: paper?.success === true ? [paper.data] : undefined,
    document: paper?.success === false ? on : undefined,
  };
}

/** `8 pallets`, or `all`; nothing for what no other outcome speaks of. */
export function howMuch(word: string | undefined): { quantity?: TradeQuantity; all?: true } {
  if (word === undefined || word.trim() === '') return {};
  if (word.trim().toLowerCase() === 'all') return { all: true };
  const quantity = parseTradeQuantity(word);
  if (quantity === undefined)
    throw new DossierError('bad-value', `"${word}" is not a quantity with its unit`, {
      where: { field: 'how much' },
      fix: `Write it like "8 pallets", or all; units are ${tradeUnit.options.join(', ')}.`,
    });
  return { quantity };
}

/** Reasons of the closed list; undefined where none is typed. Throws DossierError `bad-value` for another word. */
export function reasonsOf(typed: string | readonly string[] | undefined): string[] | undefined {
  if (typed === undefined) return undefined;
  const said = (typeof typed === 'string' ? [typed] : typed).flatMap((one) => one.split(','));
  return said
    .map((one) => one.trim().toLowerCase())
    .filter((one) => one !== '')
    .map((one) => {
      const known = outcomeReason.options.find((reason) => reason === one);
      if (known === undefined) throw unknownWord('reason', one, outcomeReason.options, '--why');
      return known;
    });
}

/**
 * Where an outcome belongs: the stop and the line as typed, each derived from the other where that leaves one. Throws
 * DossierError `bad-value` with the choices, and for a line that is not delivered at the stop.
 */
export function outcomePlace(
  delivery: Delivery,
  stop: Stop | undefined,
  line: string | undefined,
  isPart: boolean,
): { stop: Stop; line?: string } {
  const found = delivery.lines.find(({ id }) => id === line);
  const drops = delivery.stops.filter(({ does }) => does === 'unload');
  const own = found === undefined ? undefined : drops.find(({ id }) => id === found.to);
  const at = stop ?? own ?? (drops.length === 1 ? drops[0] : undefined);
  if (at === undefined)
    throw new DossierError('bad-value', 'not told at which stop', {
      where: { field: '--stop' },
      fix: `Name the stop or the line: --stop ${drops.map(({ id }) => id).join(' or --stop ')}.`,
      choices: drops.map(({ id }) => id),
    });
  const here = delivery.lines.filter(({ to }) => to === at.id);
  if (at.does !== 'unload' || here.length === 0)
    throw new DossierError('bad-value', `nothing is delivered at ${at.id}`, {
      where: { field: '--stop' },
      fix: `Use one of: ${drops.map(({ id }) => id).join(', ')}.`,
      choices: drops.map(({ id }) => id),
    });
  if (found !== undefined && own !== undefined && own.id !== at.id)
    throw new DossierError('bad-value', `${found.id} is delivered at ${own.id}, not at ${at.id}`, {
      where: { field: '--line' },
      fix: `Use one of: ${idsOf(here)}; or change delivery.yaml if the goods went elsewhere.`,
      choices: here.map(({ id }) => id),
    });
  if (found === undefined && isPart && here.length > 1)
    throw new DossierError('bad-value', 'not told of which line', {
      where: { field: '--line' },
      fix: `Say of which goods: --line ${here.map(({ id }) => id).join(' or --line ')}.`,
      choices: here.map(({ id }) => id),
    });
  const [only] = here;
  const of = found ?? (isPart && here.length === 1 ? only : undefined);
  return of === undefined ? { stop: at } : { stop: at, line: of.id };
}

const idsOf = (lines: readonly Line[]) => lines.map(({ id }) => id).join(', ');

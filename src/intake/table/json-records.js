// Tables of records in JSON (RFC 8259) and JSON lines.
import { DEEPEST, MOST_LISTS, notRead, sheetOf } from './record-sheet.js';

/** @typedef {import('./record-sheet.js').Fields} Fields */

/**
 * The single values in a record, by their names from the outside in; the names of lists in it go to `lists`.
 * @param {unknown} value
 * @param {string} name
 * @param {Fields} into
 * @param {Set<string>} lists
 * @param {number} [depth]
 */
function flatten(value, name, into, lists, depth = 0) {
  if (depth > DEEPEST) throw new Error(`values are nested deeper than ${DEEPEST} levels`);
  if (Array.isArray(value)) {
    if (value.length > 0) lists.add(name);
    return;
  }
  if (typeof value !== 'object' || value === null) into.set(name, value);
  else
    for (const [key, inner] of Object.entries(value))
      flatten(inner, name === '' ? key : `${name} ${key}`, into, lists, depth + 1);
}

/** @param {unknown} value */
const isRecord = (value) => typeof value === 'object' && value !== null && !Array.isArray(value);

/**
 * @param {unknown} value
 * @param {Set<string>} [lists]
 */
function fieldsOf(value, lists = new Set()) {
  /** @type {Fields} */
  const fields = new Map();
  flatten(value, '', fields, lists);
  return fields;
}

/**
 * `within`: it stands in the records of another list.
 * @typedef {{ name: string, within: boolean, records: Fields[], lists: Set<string> }} List
 */

/**
 * The lists of records in a document by their place in it. Where a list stands in each record of another, its records
 * are one list, and carry what stands beside it: readings of several sensors are told apart by that.
 * @param {unknown} document
 */
function listsIn(document) {
  /** @type {Map<string, List>} */
  const lists = new Map();
  /** @type {(value: unknown, place: string, beside: Fields, depth: number, within?: boolean) => void} */
  const look = (value, place, beside, depth, within = false) => {
    if (depth > DEEPEST) throw new Error(`values are nested deeper than ${DEEPEST} levels`);
    if (Array.isArray(value)) {
      if (value.length === 0 || !value.every(isRecord)) return;
      const list = lists.get(place) ?? { name: place, within, records: [], lists: new Set() };
      lists.set(place, list);
      if (lists.size > MOST_LISTS) throw new Error(`it has more than ${MOST_LISTS} lists of records`);
      for (const one of value) {
        const fields = fieldsOf(one, list.lists);
        list.records.push(new Map([...beside, ...fields]));
        const inner = Object.entries(one).filter(([, held]) => typeof held === 'object' && held !== null);
        for (const [key, held] of inner)
          look(
            held,
            `${place} ${key}`.trim(),
            new Map([...beside, ...named(place, fields)]),
            depth + 1,
            true,
          );
      }
    } else if (typeof value === 'object' && value !== null)
      for (const [key, inner] of Object.entries(value))
        look(inner, `${place} ${key}`.trim(), beside, depth + 1, within);
  };
  look(document, '', new Map(), 0);
  return [...lists.values()].sort((a, b) => b.records.length - a.records.length);
}

/**
 * Fields of what a list stands in, by the name of that.
 * @param {string} place
 * @param {Fields} fields
 */
const named = (place, fields) =>
  [...fields].map(([key, value]) => /** @type {const} */ ([`${place} ${key}`.trim(), value]));

/** @param {string} text */
export function jsonSheets(text) {
  /** @type {unknown} */
  const document = JSON.parse(text);
  const above = isRecord(document) ? fieldsOf(document) : /** @type {Fields} */ (new Map());
  const lists = listsIn(document);
  /** @type {Set<string>} */
  const taken = new Set();
  return lists.flatMap(({ name: place, within, records, lists: inner }) => {
    // What is a table of its own is not lost.
    const lost = [...inner].filter((key) => !lists.some((one) => one.name === `${place} ${key}`.trim()));
    const last = place === '' ? 'records' : place.slice(place.lastIndexOf(' ') + 1);
    const name = within || taken.has(last) ? place : last;
    taken.add(name);
    return sheetOf(name, above, records, notRead(lost));
  });
}

/** @param {string} text */
export function jsonLineSheets(text) {
  const lines = text.split(/\r?\n/);
  /** @type {string[]} */
  const losses = [];
  /** @type {Set<string>} */
  const lists = new Set();
  const records = lines.flatMap((line, i) => {
    if (line.trim() === '') return [];
    try {
      return [fieldsOf(JSON.parse(line), lists)];
    } catch (cause) {
      // A recorder that loses power leaves its last record unfinished.
      if (!lines.slice(i + 1).every((rest) => rest.trim() === ''))
        throw new Error(`line ${i + 1} is not JSON`, { cause });
      losses.push(`the file ends within the record in line ${i + 1}, which is not read`);
      return [];
    }
  });
  return sheetOf('records', new Map(), records, [...losses, ...notRead([...lists])]);
}

// Reads tables of records in JSON (RFC 8259), JSON lines and XML 1.0; a thread of its own with a bounded heap, since
// what is nested deep or wide takes many times its size in memory.
import { SaxesParser } from 'saxes';
import { answering } from '../../platform/node/worker/answering.js';
import { linesOf } from './cell-text.js';

/** Columns of a table, and levels at which a value may stand. */
const MOST_COLUMNS = 1_000;
const DEEPEST = 40;

/** @typedef {Map<string, unknown>} Fields */
/** @typedef {{ is: 'json' | 'json-lines' | 'xml', text: string }} Asked */
/** @typedef {{ name: string, attributes: [string, string][], children: Element[], text: string }} Element */

/**
 * One sheet: lines of what stands beside the records, the headings, the records.
 * @param {string} name
 * @param {Fields} above
 * @param {Fields[]} records
 */
function sheetOf(name, above, records) {
  /** @type {Set<string>} */
  const names = new Set();
  for (const fields of records) {
    for (const key of fields.keys()) names.add(key);
    if (names.size > MOST_COLUMNS)
      throw new Error(`its records have more than ${MOST_COLUMNS} different names`);
  }
  const headings = [...names];
  const rows = records.map((fields) => headings.map((heading) => fields.get(heading)));
  return [{ name, text: linesOf([...above, headings, ...rows]) }];
}

/**
 * The single values in a record, by their names from the outside in; lists in it are left out.
 * @param {unknown} value
 * @param {string} name
 * @param {Fields} into
 * @param {number} [depth]
 */
function flatten(value, name, into, depth = 0) {
  if (depth > DEEPEST) throw new Error(`values are nested deeper than ${DEEPEST} levels`);
  if (Array.isArray(value)) return;
  if (typeof value !== 'object' || value === null) into.set(name, value);
  else
    for (const [key, inner] of Object.entries(value))
      flatten(inner, name === '' ? key : `${name} ${key}`, into, depth + 1);
}

/** @param {unknown} value */
const isRecord = (value) => typeof value === 'object' && value !== null && !Array.isArray(value);

/** @param {unknown} value */
function fieldsOf(value) {
  /** @type {Fields} */
  const fields = new Map();
  flatten(value, '', fields);
  return fields;
}

/**
 * The longest list of records in a document, and what stands beside it.
 * @param {unknown} document
 */
function listIn(document) {
  /** @type {{ name: string, list: unknown[] }} */
  let longest = { name: 'records', list: [] };
  /** @type {(value: unknown, name: string, depth: number) => void} */
  const look = (value, name, depth) => {
    if (depth > DEEPEST) throw new Error(`values are nested deeper than ${DEEPEST} levels`);
    if (Array.isArray(value)) {
      if (value.length > longest.list.length && value.every(isRecord)) longest = { name, list: value };
    } else if (typeof value === 'object' && value !== null)
      for (const [key, inner] of Object.entries(value)) look(inner, key, depth + 1);
  };
  look(document, 'records', 0);
  return longest;
}

/** @param {string} text */
function jsonSheets(text) {
  /** @type {unknown} */
  const document = JSON.parse(text);
  const { name, list } = listIn(document);
  if (list.length === 0) return [];
  return sheetOf(name, isRecord(document) ? fieldsOf(document) : new Map(), list.map(fieldsOf));
}

/** @param {string} text */
function jsonLineSheets(text) {
  const lines = text.split(/\r?\n/);
  const records = lines.flatMap((line, i) => {
    if (line.trim() === '') return [];
    try {
      return [fieldsOf(JSON.parse(line))];
    } catch (cause) {
      // A file that is cut off loses its last record.
      if (lines.slice(i + 1).every((rest) => rest.trim() === '')) return [];
      throw new Error(`line ${i + 1} is not JSON`, { cause });
    }
  });
  return sheetOf('records', new Map(), records);
}

/**
 * Neither declarations of entities nor files that a document names are read.
 * @param {string} text
 * @returns {Element}
 */
function treeOf(text) {
  /** @type {Element} */
  const root = { name: '', attributes: [], children: [], text: '' };
  const open = [root];
  const parser = new SaxesParser();
  parser.on('error', (error) => {
    throw error;
  });
  let attributes = 0;
  parser.on('opentagstart', () => {
    attributes = 0;
  });
  parser.on('attribute', () => {
    attributes += 1;
    if (attributes > MOST_COLUMNS) throw new Error(`an element has more than ${MOST_COLUMNS} attributes`);
  });
  parser.on('opentag', ({ name, attributes }) => {
    const element = { name: local(name), attributes: attributesOf(attributes), children: [], text: '' };
    open.at(-1)?.children.push(element);
    open.push(element);
    if (open.length > DEEPEST) throw new Error(`elements are nested deeper than ${DEEPEST} levels`);
  });
  const add = (/** @type {string} */ more) => {
    const element = open.at(-1);
    if (element !== undefined) element.text += more;
  };
  parser.on('text', add);
  parser.on('cdata', add);
  parser.on('closetag', () => {
    open.pop();
  });
  parser.write(text).close();
  return root;
}

/** @param {string} name */
const local = (name) => name.slice(name.indexOf(':') + 1);

/**
 * @param {Record<string, string>} attributes
 * @returns {[string, string][]}
 */
const attributesOf = (attributes) =>
  Object.entries(attributes).flatMap(([name, value]) =>
    name.startsWith('xml') ? [] : [[local(name), String(value)]],
  );

/**
 * The values of an element with their names: attributes, and elements without others in them.
 * @param {Element} element
 * @returns {[string, string][]}
 */
function valuesOf({ attributes, children, text }) {
  const inner = children.flatMap((child) => {
    if (child.children.length > 0) return valuesOf(child);
    const value = child.text.trim();
    /** @type {[string, string][]} */
    const own = value === '' && child.attributes.length > 0 ? [] : [[child.name, value]];
    return [...own, ...child.attributes];
  });
  const own = text.trim();
  return [...attributes, ...inner, .../** @type {[string, string][]} */ (own === '' ? [] : [['value', own]])];
}

/**
 * The elements of one name and place that are most, with at least two values each: the rows of the table.
 * @param {Element} root
 */
function rowsIn(root) {
  /** @type {Map<string, { rows: Element[], values: number }>} */
  const places = new Map();
  /** @type {(element: Element, path: string) => void} */
  const look = (element, path) => {
    const place = places.get(path) ?? { rows: [], values: 0 };
    place.rows.push(element);
    place.values += element.attributes.length + element.children.length;
    places.set(path, place);
    for (const child of element.children) look(child, `${path}/${child.name}`);
  };
  for (const child of root.children) look(child, child.name);
  return [...places.values()]
    .filter(({ rows, values }) => rows.length > 1 && values >= 2 * rows.length)
    .reduce((/** @type {Element[]} */ best, { rows }) => (rows.length > best.length ? rows : best), []);
}

/** @param {string} text */
function xmlSheets(text) {
  const root = treeOf(text);
  const rows = rowsIn(root);
  const [first] = rows;
  if (first === undefined) return [];
  const isRow = new Set(rows);
  /** @type {Fields} */
  const above = new Map();
  /** @type {(element: Element) => void} */
  const beside = (element) => {
    if (isRow.has(element)) return;
    for (const [name, value] of element.attributes) above.set(name, value);
    if (element.children.length === 0 && element.text.trim() !== '')
      above.set(element.name, element.text.trim());
    for (const child of element.children) beside(child);
  };
  for (const child of root.children) beside(child);
  const values = rows.map(valuesOf);
  // Cells of one name go by their place, and the first row is that of the headings.
  if (values.every((row) => new Set(row.map(([name]) => name)).size < row.length || row.length < 2))
    return [{ name: first.name, text: linesOf([...above, ...values.map((row) => row.map(([, v]) => v))]) }];
  return sheetOf(
    first.name,
    above,
    values.map((row) => new Map(row)),
  );
}

answering((/** @type {Asked} */ { is, text }) => {
  switch (is) {
    case 'json':
      return jsonSheets(text);
    case 'json-lines':
      return jsonLineSheets(text);
    case 'xml':
      return xmlSheets(text);
  }
});

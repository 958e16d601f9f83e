// Tables of elements that repeat in XML 1.0.
import { SaxesParser } from 'saxes';
import { linesOf } from './cell-text.js';
import { DEEPEST, MOST_COLUMNS, MOST_LISTS, sheetOf } from './record-sheet.js';

/** @typedef {import('./record-sheet.js').Fields} Fields */
/** @typedef {{ name: string, attributes: [string, string][], children: Element[], text: string }} Element */

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

/** @typedef {{ rows: Element[], parents: Element[][], values: number }} Place */

/**
 * The elements of one name and place, with what they stand in: tables are those with at least two values each, the
 * longest first.
 * @param {Element} root
 */
function tablesIn(root) {
  /** @type {Map<string, Place>} */
  const places = new Map();
  /** @type {(element: Element, path: string, parents: Element[]) => void} */
  const look = (element, path, parents) => {
    const place = places.get(path) ?? { rows: [], parents: [], values: 0 };
    place.rows.push(element);
    place.parents.push(parents);
    place.values += element.attributes.length + element.children.length;
    places.set(path, place);
    const within = [...parents, element];
    for (const child of element.children) look(child, `${path}/${child.name}`, within);
  };
  for (const child of root.children) look(child, child.name, []);
  return [...places.values()]
    .filter(({ rows, values }) => rows.length > 1 && values >= 2 * rows.length)
    .sort((a, b) => b.rows.length - a.rows.length)
    .slice(0, MOST_LISTS);
}

/**
 * What is said of an element itself: its attributes, and elements in it that hold a text and nothing else.
 * @param {Element} element
 * @returns {[string, string][]}
 */
const ownFields = ({ attributes, children }) => [
  ...attributes,
  ...children.flatMap((child) =>
    child.children.length === 0 && child.attributes.length === 0 && child.text.trim() !== ''
      ? [/** @type {[string, string]} */ ([child.name, child.text.trim()])]
      : [],
  ),
];

/**
 * A field that stands twice in a row keeps both values, the second under a name of its own.
 * @param {readonly (readonly [string, string])[]} values
 */
function fieldsOfRow(values) {
  /** @type {Fields} */
  const fields = new Map();
  for (const [name, value] of values) {
    let key = name;
    for (let n = 2; fields.has(key); n += 1) key = `${name} ${n}`;
    fields.set(key, value);
  }
  return fields;
}

/** @param {string} text */
export function xmlSheets(text) {
  const root = treeOf(text);
  const [longest, ...others] = tablesIn(root);
  if (longest === undefined) return [];
  const isRow = new Set(longest.rows);
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
  // Values of a row are no tables of their own.
  const apart = others.filter(({ parents }) => !parents.some((chain) => chain.some((one) => isRow.has(one))));
  return [longest, ...apart].flatMap((place) => sheetsOf(place, above));
}

/** @type {(element: Element) => boolean} */
const hasAttributes = ({ attributes, children }) => attributes.length > 0 || children.some(hasAttributes);

/** @type {(element: Element) => string} */
const allText = ({ text, children }) => [text, ...children.map(allText)].join('').trim();

/**
 * The texts of a row's cells. A cell may say its place, counted from 1, where empty ones before it are left out.
 * @param {Element} row
 */
function cellsOf({ children }) {
  /** @type {string[]} */
  const cells = [];
  for (const child of children) {
    const place = Number(child.attributes.find(([name]) => name === 'Index')?.[1]);
    if (Number.isInteger(place) && place <= MOST_COLUMNS) while (cells.length < place - 1) cells.push('');
    cells.push(allText(child));
  }
  return cells;
}

/**
 * @param {Place} place
 * @param {Fields} above
 */
function sheetsOf({ rows, parents }, above) {
  const name = rows[0]?.name ?? 'records';
  // Cells of one name go by their place, and the first row is that of the headings: a table for each element around.
  if (rows.every(({ children }) => children.length > 1 && new Set(children.map((c) => c.name)).size === 1)) {
    /** @type {Map<Element | undefined, string[][]>} */
    const tables = new Map();
    rows.forEach((row, i) => {
      const around = parents[i]?.at(-1);
      const table = tables.get(around) ?? [];
      tables.set(around, table);
      table.push(cellsOf(row));
    });
    // Attributes once were cells too: a log that was read so is not found under this name, rather than read otherwise.
    const cells = rows.some(({ children }) => children.some(hasAttributes)) ? `cells of ${name}` : name;
    return [...tables.values()].map((table, i) => ({
      name: i === 0 ? cells : `${cells} ${i + 1}`,
      text: linesOf([...above, ...table]),
    }));
  }
  const values = rows.map(valuesOf);
  // Rows that stand in several elements are told apart by what is said of those.
  const shared = new Set(parents[0]?.filter((one) => parents.every((chain) => chain.includes(one))));
  const around = parents[0]?.findLast((one) => !shared.has(one));
  return sheetOf(
    around === undefined ? name : `${around.name} ${name}`,
    above,
    values.map((row, i) =>
      fieldsOfRow([
        ...(parents[i] ?? []).flatMap((one) =>
          shared.has(one)
            ? []
            : ownFields(one).map(([key, value]) => /** @type {const} */ ([`${one.name} ${key}`, value])),
        ),
        ...row,
      ]),
    ),
  );
}

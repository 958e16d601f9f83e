import { ZipFile } from 'yazl';

/** A cell: text, a number, a day number shown as a date, or an error. */
export type MadeCell = string | number | { day: number } | { error: string } | undefined;

const HEAD = '<?xml version="1.0" encoding="UTF-8"?>';
const MAIN = 'xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"';
const OFFICE = 'http://schemas.openxmlformats.org/officeDocument/2006/relationships';
const PACKAGE = 'http://schemas.openxmlformats.org/package/2006/relationships';

const escaped = (text: string): string => text.replaceAll('&', '&amp;').replaceAll('<', '&lt;');

function cellXml(cell: MadeCell, at: string): string {
  if (cell === undefined) return '';
  if (typeof cell === 'string') return `<c r="${at}" t="inlineStr"><is><t>${escaped(cell)}</t></is></c>`;
  if (typeof cell === 'number') return `<c r="${at}"><v>${cell}</v></c>`;
  if ('day' in cell) return `<c r="${at}" s="1"><v>${cell.day}</v></c>`;
  return `<c r="${at}" t="e"><v>${cell.error}</v></c>`;
}

export function sheetXml(rows: readonly (readonly MadeCell[])[]): string {
  const data = rows
    .map((cells, r) => {
      const inner = cells.map((cell, c) => cellXml(cell, `${String.fromCharCode(65 + c)}${r + 1}`)).join('');
      return inner === '' ? '' : `<row r="${r + 1}">${inner}</row>`;
    })
    .join('');
  return `${HEAD}<worksheet ${MAIN}><sheetData>${data}</sheetData></worksheet>`;
}

export async function zipped(entries: Readonly<Record<string, string | Buffer>>): Promise<Buffer> {
  const zip = new ZipFile();
  for (const [name, content] of Object.entries(entries)) zip.addBuffer(Buffer.from(content), name);
  zip.end();
  const chunks: Buffer[] = [];
  for await (const chunk of zip.outputStream) chunks.push(Buffer.from(chunk));
  return Buffer.concat(chunks);
}

/** The parts of a workbook (ECMA-376 part 1 §12.3, §18); style 1 is a date with time, number format 22. */
export function workbook(
  sheets: Readonly<Record<string, string>>,
  date1904?: '1' | 'true',
): Record<string, string> {
  const names = Object.keys(sheets);
  const relation = (id: string, kind: string, target: string) =>
    `<Relationship Id="${id}" Type="${OFFICE}/${kind}" Target="${target}"/>`;
  return {
    '[Content_Types].xml': `${HEAD}<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types"/>`,
    'xl/workbook.xml': `${HEAD}<workbook ${MAIN} xmlns:r="${OFFICE}"><workbookPr${date1904 === undefined ? '' : ` date1904="${date1904}"`}/><sheets>${names
      .map((name, i) => `<sheet name="${name}" sheetId="${i + 1}" r:id="rId${i + 1}"/>`)
      .join('')}</sheets></workbook>`,
    'xl/_rels/workbook.xml.rels': `${HEAD}<Relationships xmlns="${PACKAGE}">${names
      .map((_, i) => relation(`rId${i + 1}`, 'worksheet', `worksheets/sheet${i + 1}.xml`))
      .join('')}${relation('rIdS', 'styles', 'styles.xml')}</Relationships>`,
    'xl/styles.xml': `${HEAD}<styleSheet ${MAIN}><cellXfs count="2"><xf numFmtId="0"/><xf numFmtId="22"/></cellXfs></styleSheet>`,
    ...Object.fromEntries(names.map((name, i) => [`xl/worksheets/sheet${i + 1}.xml`, sheets[name] ?? ''])),
  };
}

export const spreadsheet = (
  sheets: Readonly<Record<string, readonly (readonly MadeCell[])[]>>,
): Promise<Buffer> =>
  zipped(workbook(Object.fromEntries(Object.entries(sheets).map(([name, rows]) => [name, sheetXml(rows)]))));

// Reads the sheets of a spreadsheet; a thread of its own with a bounded heap, since a few bytes of XML can ask
// for a table of a billion cells.
import readXlsxFile from 'read-excel-file/universal';
import { answering } from '../../platform/node/worker/answering.js';
import { linesOf } from './cell-text.js';

answering(async (/** @type {ArrayBuffer} */ bytes) =>
  (await readXlsxFile(bytes)).map(({ sheet, data }) => ({ name: sheet, text: linesOf(data) })),
);

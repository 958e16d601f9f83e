// Reads the sheets of a spreadsheet; a thread of its own with a bounded heap, since a few bytes of XML can ask
// for a table of a billion cells.
import readXlsxFile from 'read-excel-file/universal';
import { answering } from '../../platform/node/worker/answering.js';
import { linesOf } from './cell-text.js';

answering(async (/** @type {ArrayBuffer} */ bytes) =>
  // A sheet of a chart has no rows, whatever the types of the library say.
  (await readXlsxFile(bytes)).map(({ sheet, data }) => ({
    name: sheet,
    text: Array.isArray(data) ? linesOf(data) : '',
  })),
);

// Reads tables of records in JSON, JSON lines and XML; a thread of its own with a bounded heap, since what is nested deep
// or wide takes many times its size in memory.
import { answering } from '../../platform/node/worker/answering.js';
import { jsonLineSheets, jsonSheets } from './json-records.js';
import { xmlSheets } from './xml-records.js';

/** @typedef {{ is: 'json' | 'json-lines' | 'xml', text: string }} Asked */

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

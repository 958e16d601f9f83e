// A process of its own, so that its peak memory is that of the reading alone.
// node read-log.worker.js own|split <file>: prints seconds, peak memory in MB and the number of rows as JSON.
import { createReadStream } from 'node:fs';
import { TextDecoder } from 'node:util';

const [, , how, file = ''] = process.argv;

/** What no reader of a table can do without: bytes to text, text to lines, lines to cells. Keeps nothing. */
async function bareSplit() {
  const decoder = new TextDecoder();
  let rest = '';
  let rows = 0;
  let cells = 0;
  for await (const chunk of createReadStream(file, { highWaterMark: 1 << 20 })) {
    const lines = (rest + decoder.decode(chunk, { stream: true })).split('\n');
    rest = lines.pop() ?? '';
    for (const line of lines) {
      cells += line.split(',').length;
      rows += 1;
    }
  }
  if (cells < rows) throw new Error('no cells');
  return rows - 1;
}

async function readLog() {
  const { recogniseUnitLog } = await import('../../dist/intake/unit-log/recognise.js');
  const { readUnitLog } = await import('../../dist/intake/unit-log/read.js');
  const { evidenceId } = await import('../../dist/core/model/evidence.js');
  const { zone } = await import('../../dist/core/model/time.js');
  const found = await recogniseUnitLog(file, { fileName: file, logZone: zone.parse('America/Phoenix') });
  if (found.is !== 'log') throw new Error(found.problem.message);
  const log = await readUnitLog(file, found.mapping, { evidence: evidenceId.parse('e1'), addedSeconds: 0 });
  return log.times.length;
}

const start = performance.now();
const rows = how === 'own' ? await readLog() : await bareSplit();
const seconds = (performance.now() - start) / 1000;
console.log(JSON.stringify({ seconds, megabytes: process.resourceUsage().maxRSS / 1024, rows }));

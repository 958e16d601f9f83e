// Makes a delivery and takes a folder in, in a process of its own, and says what it took in memory.
import { readFileSync } from 'node:fs';
import { collect } from '../../dist/jobs/collect.js';
import { newDelivery } from '../../dist/jobs/new-delivery.js';

const [file = '', folder = '', evidence = ''] = process.argv.slice(2);
const now = () => new Date();
await newDelivery({ folder, by: 'Bench', now, file });

function status() {
  try {
    return readFileSync('/proc/self/status', 'utf8');
  } catch {
    return '';
  }
}

const report = await collect({
  folder,
  by: 'Bench',
  now,
  paths: [evidence],
  logZone: undefined,
  logUnit: undefined,
  progress: () => undefined,
});
// Linux counts what the process that started this one held into maxRSS (getrusage(2)); VmHWM is of this program alone.
const [, kilobytes] = /^VmHWM:\s+(\d+) kB$/m.exec(status()) ?? [];
const peakMegabytes = Number(kilobytes ?? process.resourceUsage().maxRSS) / 1024;
console.log(JSON.stringify({ peakMegabytes, taken: report.counts.taken + report.counts.held }));

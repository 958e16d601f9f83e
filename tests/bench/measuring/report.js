// Loaded before a program that is measured (`--import`): on its end it writes what it took to the file of BENCH_REPORT,
// one line for each process.
import { appendFileSync, readFileSync } from 'node:fs';
import { isMainThread } from 'node:worker_threads';

/** Linux counts what the process that started this one held into maxRSS (getrusage(2)); VmHWM is of this program alone. */
function peakMegabytes() {
  try {
    const [, kilobytes] = /^VmHWM:\s+(\d+) kB$/m.exec(readFileSync('/proc/self/status', 'utf8')) ?? [];
    if (kilobytes !== undefined) return Number(kilobytes) / 1024;
  } catch {
    // Another system, where maxRSS is of the process alone.
  }
  return process.resourceUsage().maxRSS / 1024;
}

const file = process.env.BENCH_REPORT;
if (isMainThread && file !== undefined)
  process.on('exit', () => {
    const { user, system } = process.cpuUsage();
    const took = { cpuSeconds: (user + system) / 1e6, megabytes: peakMegabytes() };
    appendFileSync(file, `${JSON.stringify(took)}\n`);
  });

import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

const REPORT = new URL('report.js', import.meta.url).href;

/**
 * What a Node program took: seconds on the clock, seconds of the processors in it and in the Node processes that it
 * started, and the peak memory of the largest of them.
 * @typedef {{ seconds: number, cpuSeconds: number, megabytes: number, out: string }} Took
 */

/**
 * Runs a Node program to its end in a process of its own.
 * @param {readonly string[]} args file and arguments
 * @param {readonly number[]} fine exit codes that are no failure
 * @returns {Took}
 */
export function measure(args, fine = [0]) {
  const room = mkdtempSync(join(tmpdir(), 'bench-report-'));
  const report = join(room, 'report');
  try {
    const begun = performance.now();
    const { status, stdout, stderr } = spawnSync(process.execPath, args, {
      encoding: 'utf8',
      maxBuffer: 1 << 28,
      env: { ...process.env, NODE_OPTIONS: `--import=${REPORT}`, BENCH_REPORT: report },
    });
    const seconds = (performance.now() - begun) / 1000;
    if (status === null || !fine.includes(status))
      throw new Error(`${args.join(' ').slice(0, 500)} failed: ${stderr}`);
    /** @type {{ cpuSeconds: number, megabytes: number }[]} */
    const processes = readFileSync(report, 'utf8')
      .trimEnd()
      .split('\n')
      .map((line) => JSON.parse(line));
    return {
      seconds,
      cpuSeconds: processes.reduce((sum, one) => sum + one.cpuSeconds, 0),
      megabytes: Math.max(...processes.map((one) => one.megabytes)),
      out: stdout,
    };
  } finally {
    rmSync(room, { recursive: true, force: true });
  }
}

/**
 * The least of each figure over some rounds, all programs in turn: what the machine can do when nothing else keeps it
 * busy, and what does keeps all of them busy.
 * @template {string} Name
 * @param {Record<Name, () => Took>} programs
 * @param {number} rounds
 * @returns {Record<Name, Took>}
 */
export function leastOf(programs, rounds) {
  const names = /** @type {Name[]} */ (Object.keys(programs));
  const least = /** @type {Record<Name, Took>} */ ({});
  for (let round = 0; round < rounds; round += 1)
    for (const name of names) {
      const took = programs[name]();
      const before = least[name] ?? took;
      least[name] = {
        seconds: Math.min(before.seconds, took.seconds),
        cpuSeconds: Math.min(before.cpuSeconds, took.cpuSeconds),
        megabytes: Math.min(before.megabytes, took.megabytes),
        out: took.out,
      };
    }
  return least;
}

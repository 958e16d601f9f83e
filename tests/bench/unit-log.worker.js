// node unit-log.worker.js own|bare FILE: reads a log and computes all that is computed of it, or only parses it into
// numbers; prints the processor seconds of reading and of computing as JSON.
import { createReadStream } from 'node:fs';
import { TextDecoder } from 'node:util';

const [, , how, file = ''] = process.argv;

/** Processor seconds since a moment. @param {NodeJS.CpuUsage} start */
function since(start) {
  const { user, system } = process.cpuUsage(start);
  return (user + system) / 1e6;
}

/** Bytes to text, lines, cells and numbers, kept in columns: the least that any computation on a table needs. */
async function bareParse() {
  const start = process.cpuUsage();
  const decoder = new TextDecoder();
  /** @type {number[][]} */
  const columns = Array.from({ length: 9 }, () => []);
  let rest = '';
  let header = true;
  for await (const chunk of createReadStream(file, { highWaterMark: 1 << 20 })) {
    const lines = (rest + decoder.decode(chunk, { stream: true })).split('\n');
    rest = lines.pop() ?? '';
    for (const line of lines) {
      if (header) {
        header = false;
        continue;
      }
      const cells = line.split(',');
      columns[0]?.push(Date.parse(cells[0] ?? ''));
      for (let i = 1; i < 9; i++) columns[i]?.push(Number(cells[i]));
    }
  }
  if ((columns[8]?.length ?? 0) === 0) throw new Error('no rows');
  return { read: since(start), computed: 0 };
}

/**
 * A warm and a cold pulp of each line at either end.
 * @param {readonly { id: string, from: string, to: string }[]} lines
 * @param {{ at: (index: number) => number | undefined }} times
 */
async function pulpsOf(lines, times) {
  const { reading } = await import('../../dist/core/model/evidence.js');
  const { toInstant } = await import('../../dist/core/model/time.js');
  return lines.flatMap(({ id, from, to }, i) =>
    [from, to].flatMap((stop, end) =>
      [40, 36].map((value, j) => ({
        ...reading.parse({
          evidence: `e${8 * i + 4 * end + j + 1}`,
          kind: 'pulp',
          source: { is: 'typed' },
          from: 'driver',
          line: id,
          place: { stop },
          temperature: { value, unit: '°F' },
          time: {
            is: 'known',
            instant: new Date(times.at(-end) ?? 0).toISOString(),
            zone: 'UTC',
            basis: 'typed',
            uncertaintySeconds: 60,
          },
        }),
        seq: 1,
        enteredAt: toInstant(0),
        enteredBy: 'bench',
        describedBy: [],
        correctedBy: [],
      })),
    ),
  );
}

/** Reads the log and assesses a delivery of three lines with pulps at either end. */
async function readAndAssess() {
  const { recogniseUnitLog } = await import('../../dist/intake/unit-log/recognise.js');
  const { readUnitLog } = await import('../../dist/intake/unit-log/read.js');
  const { evidenceId, sha256 } = await import('../../dist/core/model/evidence.js');
  const { zone, toInstant } = await import('../../dist/core/model/time.js');
  const { delivery } = await import('../../dist/core/model/delivery.js');
  const { ruleSet } = await import('../../dist/core/model/rule-set.js');
  const { assess } = await import('../../dist/core/assess/assess.js');
  const start = process.cpuUsage();
  const found = await recogniseUnitLog(file, { fileName: file, logZone: zone.parse('America/Phoenix') });
  if (found.is !== 'log') throw new Error(found.problem.message);
  const log = await readUnitLog(file, found.mapping, { evidence: evidenceId.parse('e1'), addedSeconds: 0 });
  const read = since(start);
  const root = sha256.parse('ab'.repeat(32));
  const line = {
    from: 'load-1',
    to: 'drop-1',
    pallets: 8,
    instruction: { setPoint: '36 °F', tolerance: '2 °F' },
  };
  const facts = delivery.parse({
    delivery: 'bench',
    parties: { carrier: { name: 'Invented Haulage' } },
    equipment: { trailer: { number: 'T-1' } },
    stops: [
      { id: 'load-1', does: 'load', place: 'A', zone: 'America/Phoenix' },
      { id: 'drop-1', does: 'unload', place: 'B', zone: 'America/Chicago' },
    ],
    lines: ['lettuce-romaine', 'celery', 'broccoli'].map((goods) => ({ ...line, id: goods, goods })),
  });
  const rules = ruleSet.parse({
    ruleSet: 'bench',
    version: '1',
    title: 'One rule',
    rules: [
      {
        id: 'arrived',
        stage: 'arrival',
        title: 'Arrived',
        needs: { event: 'arrived' },
        proves: ['care-in-transit'],
        why: 'for the bench',
        how: 'for the bench',
        basis: 'common practice',
      },
    ],
  });
  const begun = process.cpuUsage();
  const result = assess({
    state: {
      delivery: facts,
      deliveryHash: root,
      evidence: await pulpsOf(facts.lines, log.times),
      notCounted: [],
      corrections: [],
      strikes: [],
      merges: [],
      clocks: [],
      published: [],
      timeStamps: [],
      dossiers: [],
      claims: [],
      size: 1,
      root,
    },
    logs: [log],
    ruleSet: { ruleSet: rules, sha256: root },
    at: toInstant(Date.UTC(2030, 0, 1)),
  });
  const computed = since(begun);
  if ((result.product ?? []).some((one) => one.asMeasured === undefined))
    throw new Error('no course of the goods');
  if (result.temperatures[0]?.channels.length !== 8) throw new Error('not everything was computed');
  return { read, computed };
}

console.log(JSON.stringify(how === 'bare' ? await bareParse() : await readAndAssess()));

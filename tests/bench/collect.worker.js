// Makes a delivery and takes a folder in, in a process of its own.
import { collect } from '../../dist/jobs/collect.js';
import { newDelivery } from '../../dist/jobs/new-delivery.js';

const [file = '', folder = '', evidence = ''] = process.argv.slice(2);
const now = () => new Date();
await newDelivery({ folder, by: 'Bench', now, file });

const report = await collect({
  folder,
  by: 'Bench',
  now,
  paths: [evidence],
  logZone: undefined,
  logUnit: undefined,
  progress: () => undefined,
});
console.log(JSON.stringify({ taken: report.counts.taken + report.counts.held }));

// Takes in the folders that it is told of, one after the other, and makes what the plates show of each file.
import { cp, rm } from 'node:fs/promises';
import { join } from 'node:path';

const dist = (/** @type {string} */ file) => import(new URL(`../../dist/${file}`, import.meta.url).href);
const { prepareImages } = await dist('compose/exhibit-images.js');
const { collect } = await dist('jobs/collect.js');
const { withDelivery } = await dist('jobs/delivery.js');
const { newDelivery } = await dist('jobs/new-delivery.js');

const [facts = '', scratch = ''] = process.argv.slice(2);
const open = { folder: join(scratch, 'empty'), by: 'Stress', now: () => new Date() };
await newDelivery({ ...open, file: facts });

process.on('message', async (/** @type {string} */ files) => {
  const folder = join(scratch, 'delivery');
  await cp(open.folder, folder, { recursive: true });
  const begin = performance.now();
  const { counts } = await collect({
    ...open,
    folder,
    paths: [files],
    logZone: undefined,
    logUnit: undefined,
    progress: () => undefined,
  });
  await withDelivery({ ...open, folder }, false, async (/** @type {any} */ record) => {
    await prepareImages(record.state().evidence, (/** @type {any} */ hash) => record.readOriginal(hash));
  });
  await rm(folder, { recursive: true });
  process.send?.({
    counts,
    seconds: (performance.now() - begin) / 1000,
    megabytes: process.memoryUsage.rss() / 1e6,
  });
});
process.on('disconnect', () => process.exit());
process.send?.('ready');

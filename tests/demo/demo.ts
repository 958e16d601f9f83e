import { mkdtempSync, rmSync } from 'node:fs';
import { cp } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type BuildReport, build } from '../../src/jobs/build.js';
import { type CollectReport, collect } from '../../src/jobs/collect.js';
import { newDelivery } from '../../src/jobs/new-delivery.js';
import { CERTIFICATE_FILE } from '../../src/signing/identity.js';
import { madeOnce } from '../once.js';
import { EVIDENCE, FIXTURES } from './where.js';

/** Of an identity that lives as long as the test. */
const PASSPHRASE = 'of-a-test-that-forgets-it';

/** The demonstration's delivery in a folder of its own. */
export interface Demo {
  folder: string;
  identity: string;
  certificate: string;
  end: () => void;
}

const who = { by: 'Test', now: () => new Date() };

/** A delivery of the demonstration's facts, with nothing collected yet. */
export async function newDemo(): Promise<Demo> {
  const room = mkdtempSync(join(tmpdir(), 'demo-'));
  return { ...(await newDemoIn(room)), end: () => rmSync(room, { recursive: true, force: true }) };
}

async function newDemoIn(room: string): Promise<Omit<Demo, 'end'>> {
  const folder = join(room, 'delivery');
  const identity = join(room, 'identity');
  await newDelivery({ folder, file: join(FIXTURES, 'demo/delivery.yaml'), ...who });
  return { folder, identity, certificate: join(identity, CERTIFICATE_FILE) };
}

export function collectInto(demo: Pick<Demo, 'folder'>, ...paths: string[]): Promise<CollectReport> {
  return collect({
    folder: demo.folder,
    paths,
    logZone: undefined,
    logUnit: undefined,
    progress: () => undefined,
    ...who,
  });
}

export function buildFrom(demo: Pick<Demo, 'folder' | 'identity'>): Promise<BuildReport> {
  return build({
    folder: demo.folder,
    out: undefined,
    paper: undefined,
    identityFolder: demo.identity,
    passphrase: async () => PASSPHRASE,
    progress: () => undefined,
    ...who,
  });
}

export interface BuiltDemo {
  demo: Omit<Demo, 'end'>;
  /** The folder of the delivery as it was before it was built, to be copied. */
  before: string;
  collected: CollectReport;
  built: BuildReport;
}

/** The demonstration collected and built, once for all tests of a run: they only read it. */
export const builtDemo = madeOnce('demo', async (room): Promise<BuiltDemo> => {
  const demo = await newDemoIn(room);
  const collected = await collectInto(demo, EVIDENCE);
  const before = join(room, 'before');
  await cp(demo.folder, before, { recursive: true });
  return { demo, before, collected, built: await buildFrom(demo) };
});

import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type BuildReport, build } from '../../src/jobs/build.js';
import { type CollectReport, collect } from '../../src/jobs/collect.js';
import { newDelivery } from '../../src/jobs/new-delivery.js';
import { CERTIFICATE_FILE } from '../../src/signing/identity.js';
import { EVIDENCE, FIXTURES } from './where.js';

/** Of an identity that lives as long as the test. */
export const PASSPHRASE = 'of-a-test-that-forgets-it';

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
  const folder = join(room, 'delivery');
  const identity = join(room, 'identity');
  await newDelivery({ folder, file: join(FIXTURES, 'demo/delivery.yaml'), ...who });
  return {
    folder,
    identity,
    certificate: join(identity, CERTIFICATE_FILE),
    end: () => rmSync(room, { recursive: true, force: true }),
  };
}

export function collectInto(demo: Demo, ...paths: string[]): Promise<CollectReport> {
  return collect({
    folder: demo.folder,
    paths,
    logZone: undefined,
    logUnit: undefined,
    progress: () => undefined,
    ...who,
  });
}

export function buildFrom(demo: Demo): Promise<BuildReport> {
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
  demo: Demo;
  collected: CollectReport;
  built: BuildReport;
}

let built: Promise<BuiltDemo> | undefined;

/** The demonstration collected and built, once for all files of tests that a worker runs: they only read it. */
export function builtDemo(): Promise<BuiltDemo> {
  built ??= (async () => {
    const demo = await newDemo();
    process.once('exit', () => demo.end());
    return { demo, collected: await collectInto(demo, EVIDENCE), built: await buildFrom(demo) };
  })();
  return built;
}

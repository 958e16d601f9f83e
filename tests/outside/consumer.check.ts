import { execFileSync, spawnSync } from 'node:child_process';
import { join, resolve } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { PARTS } from '../house/parts.js';
import { installPacked, link } from './packed.js';
import { scratch } from './programs.js';

const ROOT = resolve(import.meta.dirname, '../..');
const TSC = join(ROOT, 'node_modules/typescript/lib/tsc.js');
const disk = scratch();
afterAll(() => disk.end());

beforeAll(() => {
  installPacked(disk.folder);
  disk.put('package.json', '{ "type": "module" }');
  disk.put('use.ts', USE);
});

const USE = `
${PARTS.map(({ name }, i) => `import * as part${i} from '${name}';`).join('\n')}
export const parts = [${PARTS.map((_, i) => `part${i}`).join(', ')}];
import { type Signer, type TimeStampClient, build, collect } from 'load-dossier';
import { assess, type Assessment, type AssessInput } from 'load-dossier/assess';
import { newDelivery } from 'load-dossier/record';
import { celsius, parseTemperature, whatIsPublished } from 'load-dossier/reference';
import { type Verification, verifyDossier } from 'load-dossier/verify';

const signer: Signer = { certificateDer: new Uint8Array(), sign: async ({ digest }) => digest };
const timeStamps: TimeStampClient = { name: 'none', request: async ({ digest }) => digest };
export const now = () => new Date();
export const dossier = async (folder: string, signal: AbortSignal) => {
  const open = { folder, by: 'A consumer', now };
  await newDelivery({ ...open, file: 'delivery.yaml' });
  const found = await collect({ ...open, paths: [], logZone: undefined, logUnit: undefined, logDates: undefined, map: undefined, signal });
  const read: number = found.counts.readings;
  return { read, built: await build({ ...open, out: undefined, paper: 'A4', signer, timeStamps, signal }) };
};
export const openGaps = (input: AssessInput): string[] => {
  const result: Assessment = assess(input);
  return result.gaps.filter(({ outcome }) => outcome === 'missing').map(({ title }) => title);
};
export const saying: string[] = (whatIsPublished('celery')?.quantities ?? []).flatMap(({ values }) =>
  values.map(({ source }) => source.title),
);
export const five: number = celsius(parseTemperature('41 °F') ?? { value: 0, unit: '°C' });
const found: Verification = await verifyDossier(new Uint8Array());
if (found.verdict !== 'broken' || Math.abs(five - 5) > 1e-9) throw new Error('wrong');
console.log(parts.length, 'parts');
`;

describe('a consumer in strict TypeScript that looks into the declarations too', () => {
  it.each([
    ['with the words of a browser, without types of Node', { lib: ['ES2023', 'DOM'], types: [] }],
    ['with types of Node alone', { lib: ['ES2023'], types: ['node'] }],
  ])('compiles %s', (_, options) => {
    if (options.types.length > 0)
      for (const name of ['@types/node', 'undici-types']) link(disk.folder, `node_modules/${name}`);
    const compilerOptions = {
      ...{ target: 'ES2023', module: 'NodeNext', strict: true, skipLibCheck: false, preserveSymlinks: true },
      ...{ exactOptionalPropertyTypes: true, noUncheckedIndexedAccess: true, outDir: 'out' },
      ...options,
    };
    disk.put('tsconfig.json', JSON.stringify({ compilerOptions, include: ['use.ts'] }));
    const { stdout } = spawnSync(process.execPath, [TSC, '-p', disk.folder], { encoding: 'utf8' });
    expect(stdout).toBe('');
  });

  it('runs', () => {
    const out = execFileSync(process.execPath, [join(disk.folder, 'out/use.js')], { encoding: 'utf8' });
    expect(out).toBe(`${PARTS.length} parts\n`);
  });
});

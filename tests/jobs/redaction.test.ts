import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import exifr from 'exifr';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Assessment, Finding } from '../../src/core/model/results.js';
import { embeddedFiles } from '../../src/core/verify/pdf/attachments.js';
import { readPdf } from '../../src/core/verify/pdf/file.js';
import { type BuildOptions, build, verifyDossier } from '../../src/index.js';
import { describe as say } from '../../src/jobs/describe.js';
import { intersectAssessments } from '../../src/jobs/redaction/intersect-assessments.js';
import { readCopy } from '../../src/jobs/redaction/read.js';
import { textOf } from '../compose/pages.js';
import { builtDemo } from '../demo/demo.js';
import { sampleIdentity } from '../signing/sample-identity.js';

const signer = sampleIdentity({ notAfter: new Date(Date.now() + 86_400_000) });
const root = mkdtempSync(join(tmpdir(), 'copies-'));
const who = { folder: join(root, 'delivery'), by: 'A test', now: () => new Date() };
afterAll(() => rmSync(root, { recursive: true, force: true }));

beforeAll(async () => {
  cpSync((await builtDemo()).before, who.folder, { recursive: true });
}, 120_000);

const built = async (more: Partial<BuildOptions>) => {
  const out = join(root, `${more.for ?? 'own'}-${more.maxSize ?? ''}.pdf`);
  const report = await build({
    ...who,
    out,
    paper: undefined,
    signer,
    progress: () => undefined,
    ...more,
  });
  return { report, bytes: readFileSync(out) };
};

/** Contents of all attachments, as they are inside. */
const attached = (pdf: Uint8Array) =>
  Promise.all(
    embeddedFiles(readPdf(pdf)).map(async ({ name, read }) => ({ name, data: await read(100_000_000) })),
  );

describe('a copy for the receiver', () => {
  it('verifies as intact, counts what it leaves out, and gives no coordinates away', async () => {
    await say({
      ...who,
      evidence: ['e86'],
      act: 'say',
      says: { blackOut: ['0.2,0.2,0.3,0.3'] },
    });
    const { report, bytes } = await built({ for: 'receiver' });
    expect(report.copy).toMatchObject({ name: 'receiver', title: 'the receiver' });
    expect(report.copy?.entriesLeftOut).toBeGreaterThan(0);
    const verified = await verifyDossier(bytes);
    expect(verified.checks.filter(({ result }) => result === 'failed')).toEqual([]);
    expect(JSON.stringify(verified.checks)).toContain(`${report.copy?.entriesLeftOut} of`);
    const inside = await attached(bytes);
    expect(inside.length).toBeGreaterThan(5);
    for (const { name, data } of inside) {
      const text = Buffer.from(data).toString('latin1');
      expect([name, /"gps":|GPSLatitude/.test(text)]).toEqual([name, false]);
      if (/\.jpe?g$/.test(name))
        expect([name, await exifr.gps(Buffer.from(data))]).toEqual([name, undefined]);
    }
    const manifest = Buffer.from(inside.find(({ name }) => name === 'manifest.json')?.data ?? []).toString();
    expect(manifest).toContain('"why":"blacked-out"');
    expect(manifest).toContain('"why":"position"');
    // One line for each reason, however many originals there are.
    const notInside = report.notices.filter((notice) => notice.includes('not inside'));
    expect(notInside).toHaveLength(2);
    expect(notInside.join('\n')).toMatch(
      /^The originals of 17 files are not inside, .* where they were made: .*IMG_0404\.jpg, .*IMG_0440\.jpg\.$/m,
    );
    // Contacts are left out of this copy, not missing from the record.
    const text = await textOf(bytes);
    expect(text).not.toContain('The record holds no contact');
  }, 120_000);

  it('has no bag, which would hold the whole record', async () => {
    await expect(built({ for: 'receiver', bag: true })).rejects.toThrow(
      expect.objectContaining({ code: 'bad-usage', where: { field: '--bag' } }),
    );
  });

  it('is refused for a reader that nothing is said of', async () => {
    await expect(built({ for: 'nobody' })).rejects.toThrow(
      expect.objectContaining({ code: 'bad-usage', where: { field: '--for' } }),
    );
  });
});

describe('copies.yaml of a carrier', () => {
  it.each([
    ['a field that there is not', 'surveyor:\n  title: a surveyor\n  positions: true\n  position: true\n', 4],
    [
      'a kind that there is not',
      'surveyor:\n  title: x\n  positions: true\n  leaveOut:\n    kinds: [pulps]\n',
      5,
    ],
    ['a title without English', 'surveyor:\n  positions: true\n  title: { es: el perito }\n', 3],
    ['no title', 'a:\n  title: a\n  positions: true\nsurveyor:\n  positions: true\n', 4],
    ['what is not YAML', 'surveyor:\n  title: a\n  title: b\n', 3],
  ])('is refused with file and line: %s', async (_, text, row) => {
    const file = join(root, 'copies.yaml');
    writeFileSync(file, text);
    await expect(readCopy(file, 'surveyor')).rejects.toThrow(
      expect.objectContaining({ code: 'bad-template', where: expect.objectContaining({ file, row }) }),
    );
  });
});

describe('a size', () => {
  it('is kept to by smaller pictures and fewer originals, and said', async () => {
    const { report, bytes } = await built({ maxSize: '3MB' });
    expect(bytes.length).toBeLessThanOrEqual(3_000_000);
    expect(report.sizing.picture.longest).toBeLessThan(1600);
    expect(report.sizing.originalsNotInside).toBeGreaterThan(0);
    expect(report.bag?.payloadFiles).toBeGreaterThan(report.sizing.originalsInside);
  }, 120_000);

  it.each(['20', '0.2MB', 'big', '5 GB'])('is refused when it is %s', async (maxSize) => {
    await expect(built({ maxSize })).rejects.toThrow(
      expect.objectContaining({ code: 'bad-usage', where: { field: '--max-size' } }),
    );
  });
});

describe('what a copy says', () => {
  const finding = (id: string, facts: Finding['facts'] = {}): Finding => ({
    id,
    weighs: 'hurts',
    element: 'care-in-transit',
    weight: 1,
    evidence: [],
    by: 'a test',
    facts,
  });
  const results = (findings: Finding[], verdict: Assessment['setPoints']['verdict']) =>
    ({ findings, gaps: [], setPoints: { words: [], differences: [], verdict } }) as unknown as Assessment;

  it('holds for the whole record: nothing that is only true because evidence is left out', () => {
    const whole = results([finding('seen', { n: 3 }), finding('told')], 'differ');
    const part = results([finding('seen', { n: 2 }), finding('told'), finding('nobody-told')], 'agree');
    const said = intersectAssessments(whole, part);
    expect(said.assessment.findings.map(({ id }) => id)).toEqual(['told']);
    expect(said.findingsLeftOut).toBe(1);
    expect(said.assessment.setPoints.verdict).toBe('not-comparable');
  });

  it('never says that nobody was told of a difference when those who were are left out', () => {
    const difference = (since: number, told: string[]) => ({
      between: [
        { source: 'bill', celsius: 2 },
        { source: 'display', celsius: 4 },
      ],
      kelvin: 2,
      since,
      told: told.map((evidence) => ({ evidence, with: 'shipper', at: since })),
    });
    const of = (...differences: object[]) =>
      ({
        findings: [],
        gaps: [],
        setPoints: { words: [], differences, verdict: 'differ' },
      }) as unknown as Assessment;
    const { assessment } = intersectAssessments(
      of(difference(1, ['e4']), difference(2, []), difference(3, ['e5'])),
      of(difference(1, []), difference(2, []), difference(3, ['e5'])),
    );
    expect(assessment.setPoints.differences.map(({ told }) => told?.length)).toEqual([undefined, 0, 1]);
  });
});

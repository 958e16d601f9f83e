import { copyFileSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import sharp from 'sharp';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { embeddedFiles } from '../../src/core/verify/pdf/attachments.js';
import { readPdf } from '../../src/core/verify/pdf/file.js';
import { type BuildOptions, build, collect, newDelivery } from '../../src/index.js';
import { readCopy, titleIn } from '../../src/jobs/redaction/read.js';
import { codeOf, englishIn } from '../compose/own-words.js';
import { textOf } from '../compose/pages.js';
import { sampleIdentity } from '../signing/sample-identity.js';

const root = mkdtempSync(join(tmpdir(), 'spanish-'));
afterAll(() => rmSync(root, { recursive: true, force: true }));
const now = () => new Date('2026-07-17T09:05:00Z');
const who = { folder: join(root, 'entrega'), by: 'R. Peralta', now };

/** A delivery in which people wrote nothing but Spanish. */
const FACTS = `delivery: E-77
parties:
  carrier: { name: Fletes Arenal }
  shipper: { name: Hortalizas Tres Pozos }
  receiver: { name: Abarrotes Llano }
equipment:
  trailer: { number: T-118, length: 53 ft, insideWidth: 99 in, airChute: true, drains: rear }
  unit: { number: U-118 }
stops:
  - { id: subida, does: load, place: 'Tres Pozos, Yuma', zone: America/Phoenix, at: [32.69, -114.62], planned: 2026-07-14T04:00 }
  - { id: bajada, does: unload, place: 'Abarrotes Llano, Omaha', zone: America/Chicago, planned: 2026-07-16T06:00 }
lines:
  - { id: romana, goods: lettuce-romaine, from: subida, to: bajada, pallets: 12, instruction: { setPoint: 36 °F, tolerance: 2 °F, run: continuous } }
  - { id: tomate, goods: tomatoes-ripe, from: subida, to: bajada, pallets: 8 }
  - { id: brocoli, goods: broccoli, from: subida, to: bajada, pallets: 4, iced: true, instruction: { setPoint: 34 °F } }
rules: ./reglas.yaml
show: { temperature: °F, language: es, paper: A4 }
`;
const READINGS = `time,kind,value,unit,line,position,stop,by,note,from,set-point,fuel,run,state
2026-07-14T03:12,event,arrived,,,,subida,M. Ortega,Se presentó en la rampa 3,,,,,
2026-07-13T18:42,set-point,38,°F,,,subida,R. Peralta,,dispatcher,,,,
2026-07-14T03:48,event,doors-opened,,,,subida,M. Ortega,,,,,,
2026-07-14T04:08,pulp,41.4,°F,romana,nose,subida,M. Ortega,,driver,,,,
2026-07-14T04:11,pulp,42.6,°F,romana,middle,subida,M. Ortega,,driver,,,,
2026-07-14T05:31,event,doors-closed,,,,subida,M. Ortega,,,,,,
2026-07-14T05:40,seal,S-9,,,,subida,M. Ortega,,,,,,applied
2026-07-14T05:46,event,departed,,,,subida,M. Ortega,,,,,,
2026-07-16T05:10,event,arrived,,,,bajada,M. Ortega,,,,,,
2026-07-16T05:52,event,doors-opened,,,,bajada,M. Ortega,,,,,,
2026-07-16T06:00,pulp,44.4,°F,romana,tail,bajada,M. Ortega,,driver,,,,
2026-07-16T06:35,event,refused,,,,bajada,M. Ortega,Viene tibia la romana,,,,,
,statement,,,,,subida,M. Ortega,Vi subir las tarimas,,,,,
`;

beforeAll(async () => {
  const from = join(root, 'pruebas');
  mkdirSync(from);
  writeFileSync(join(root, 'datos.yaml'), FACTS);
  await newDelivery({ ...who, file: join(root, 'datos.yaml') });
  writeFileSync(
    join(who.folder, 'reglas.yaml'),
    `ruleSet: nuestras
version: "1"
title: Reglas de Fletes Arenal
extends: produce
off: { pallet-tags: No llevamos etiquetas }
change: { seal-photo: { thresholds: { within: 3 h after doors-closed } } }
rules:
  - id: tarima-limpia
    stage: loading
    title: Tarima limpia
    needs: { photo: pallets-on-dock }
    proves: [care-in-transit]
    why: Se ve.
    how: Tome la foto.
    basis: common practice
`,
  );
  writeFileSync(join(from, 'lecturas.csv'), READINGS);
  copyFileSync(
    join(import.meta.dirname, '../../fixtures/demo/evidence/unit/unit-download.csv'),
    join(from, 'aire.csv'),
  );
  const noise = await sharp({
    create: { width: 300, height: 200, channels: 3, background: '#050505' },
  })
    .png()
    .toBuffer();
  writeFileSync(join(from, 'oscura.png'), noise);
  writeFileSync(join(from, 'rota.jpg'), (await sharp(noise).jpeg().toBuffer()).subarray(0, 300));
  const grey = sharp({ create: { width: 640, height: 480, channels: 3, background: '#808890' } });
  writeFileSync(
    join(from, 'borrosa.jpg'),
    await grey
      .jpeg()
      .withExif({ IFD0: { Software: 'GIMP' }, IFD2: { DateTimeOriginal: '2026:07:14 05:00:00' } })
      .toBuffer(),
  );
  writeFileSync(join(from, 'vacio.txt'), '');
  writeFileSync(join(from, 'carta.pdf'), '%PDF-1.7\n1 0 obj << /JS (x) /Launch 1 >>');
  writeFileSync(join(from, 'nada.bin'), Buffer.from([0, 1, 2, 250, 251, 0, 7]));
  writeFileSync(
    join(from, 'correo.eml'),
    'Message-ID: <1@llano.test>\r\nMIME-Version: 1.0\r\nFrom: Ana <ana@llano.test>\r\nTo: Rosa <rosa@arenal.test>\r\nSubject: La romana\r\nDate: Thu, 16 Jul 2026 06:40:00 -0500\r\n\r\nViene tibia.\r\n',
  );
  await collect({ ...who, paths: [from], logZone: undefined, logUnit: undefined, progress: () => undefined });
}, 120_000);

const signer = sampleIdentity();
const built = async (more: Partial<BuildOptions> = {}) => {
  const out = join(root, `${more.for ?? 'propio'}.pdf`);
  const report = await build({
    ...who,
    out,
    paper: undefined,
    signer,
    progress: () => undefined,
    ...more,
  });
  return { report, pdf: readFileSync(more.out ?? out) };
};

/** What stays English: commands, names of files and fields, titles of publications, and what a program prints. */
const VERIFY = readFileSync(join(import.meta.dirname, '../../templates/words/es/sections/verify.md'), 'utf8');
const STAYS = [
  ...codeOf(VERIFY).flatMap((code) => code.split('\n')),
  'Signature is Valid.',
  'Total document signed',
  'Not total document signed',
  'common practice',
  'load-dossier',
  'load- -dossier',
  // Words of a library about one picture.
  'VipsJpeg: premature end of JPEG image',
  // Names of fields in the carrier's own rules.
  'sello cerrado within',
  'Properties and recommended conditions for long-term storage of fresh fruits and vegetables',
  'Specific heat and heat of respiration for horticultural crops grown in North Carolina',
  'NC State University, Biological and Agricultural Engineering',
  'Freezing Injury',
  'Optimum Temperature',
  'Rates of Ethylene Production and Responses to Ethylene',
  'Highest freezing temperature',
  'from USDA Agriculture Handbook 66 (1986)',
  'unit-log',
  // Articles as they are cited.
  '46.2(cc)(2) to (4) and (dd)',
];
const squeezed = (text: string) => text.replace(/[`\s]+/g, ' ').trim();
/** Notes on publications, which stand in the words of these. */
const SOURCE_NOTES = /(?<=que se dan como se leyeron\.).*?(?=\d+ Lo que falta)/;
const ours = (text: string) =>
  STAYS.map(squeezed)
    .filter((one) => one.length > 3)
    .sort((a, b) => b.length - a.length)
    .reduce((rest, one) => rest.replaceAll(one, '·'), squeezed(text).replace(SOURCE_NOTES, ''))
    // Names of attachments and zones.
    .replaceAll(
      /[\w-]+\.(?:csv|yaml|jsonl|json|txt|pdf|jpg|png|bin|eml)\b|\b(?:text|application|image|message)\/[\w.-]+/g,
      '·',
    );

describe('dossier and assessment of a delivery in which people wrote Spanish', () => {
  let text: string;
  let pdf: Uint8Array;
  beforeAll(async () => {
    ({ pdf } = await built());
    const assessment = await built({ assessment: true, out: join(root, 'evaluacion.pdf') });
    text = ours(`${await textOf(pdf)} ${await textOf(assessment.pdf)}`);
  }, 120_000);

  it('has no English on its pages', () => {
    expect(text.length).toBeGreaterThan(20_000);
    expect(englishIn(text)).toEqual([]);
  });

  it.each([
    ['titles of rules', 'Remolque barrido o lavado'],
    ['why they matter', 'Después de cargar nadie ve el piso'],
    ['how to meet them', 'fotografíe piso y paredes desde las puertas'],
    ['a rule of the carrier as it is written', 'Tarima limpia'],
    ['goods of the table', 'Lechuga romana'],
    ['a reason for a missing time', 'un papel no lleva hora propia'],
    ['a reason for a missing time of a photo', 'la foto no dice cuándo se tomó'],
    ['the detail of a flag', 'pantallas y etiquetas pueden no leerse'],
    ['the traces of an editor', 'escrita por GIMP'],
    ['what a paper carries', 'una acción que inicia un programa'],
    ['the heading of an e-mail', 'Su hora es la que escribió el programa del remitente'],
    ['attachments', 'El expediente: un asiento por renglón'],
    ['what notes on publications are', 'Valores publicados, palabra por palabra'],
    ['that there is no source', 'práctica común, sin fuente'],
  ])('says in Spanish %s', (_, words) => {
    expect(text).toContain(words);
  });

  it('describes what is inside it in Spanish', () => {
    const inside = Buffer.from(pdf).toString('latin1');
    expect(embeddedFiles(readPdf(pdf)).length).toBeGreaterThan(8);
    expect(inside).not.toContain('one entry per line');
  });

  it('names the reader of a copy, which has no English either', async () => {
    const copy = await built({ for: 'receiver' });
    const said = ours(await textOf(copy.pdf));
    expect(said).toContain('Copia para el receptor.');
    expect(englishIn(said)).toEqual([]);
    // What is said on the terminal stays English.
    expect(copy.report.copy?.title).toBe('the receiver');
  }, 120_000);

  it.each(['receiver', 'insurer', 'counsel'])('has words for %s', async (name) => {
    const copy = await readCopy(join(import.meta.dirname, '../../templates/copies.yaml'), name);
    if (copy === undefined) throw new Error('it is no copy');
    expect(titleIn(copy, 'es')).toMatch(/^(el|la) /);
    expect(titleIn(copy, 'es')).not.toBe(titleIn(copy, 'en'));
  });
});

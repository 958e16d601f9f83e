// A record, its bag and a dossier of it, made from random originals: what benches and stress runs work on.
import { randomBytes } from 'node:crypto';
import { readdir, writeFile } from 'node:fs/promises';
import { join } from 'node:path';

const dist = (/** @type {string} */ file) => import(new URL(`../../dist/${file}`, import.meta.url).href);
const AT = '2026-07-17T09:00:00.000Z';

const FACTS = {
  delivery: 'sample',
  parties: { carrier: { name: 'Harrow Creek Transport' } },
  equipment: { trailer: { number: 'T-118' } },
  stops: [
    { id: 'load-1', does: 'load', place: 'Cold dock', zone: 'America/Phoenix' },
    { id: 'drop-1', does: 'unload', place: 'Warehouse', zone: 'America/Chicago' },
  ],
  lines: [{ id: 'romaine', goods: 'lettuce-romaine', from: 'load-1', to: 'drop-1' }],
};

/**
 * A record of `files` originals of `size` bytes, and its bag as a zip file.
 * @param {string} folder @param {number} files @param {number} size
 */
export async function makeRecord(folder, files, size) {
  const { createRecord } = await dist('record/store.js');
  const { machinePorts } = await dist('record/disk/ports.js');
  const { sha256Of } = await dist('core/ledger/tree.js');
  const { beginBag } = await dist('jobs/bag.js');
  const { entryBytes, printRow } = await dist('core/ledger/ledger.js');
  const yaml = JSON.stringify(FACTS);
  const path = join(folder, `record-${files}`);
  const facts = { sha256: sha256Of(Buffer.from(yaml)), facts: FACTS, by: 'sample' };
  const record = await createRecord(path, machinePorts(), facts);
  await writeFile(join(path, 'delivery.yaml'), yaml);
  for (let i = 0; i < files; i += 1) {
    const { file } = await record.addOriginalBytes(randomBytes(size), 'bin');
    await record.append([{ type: 'evidence-received', by: 'sample', body: evidence(i, file) }]);
  }
  const ledger = Buffer.concat(
    record.entries.map((/** @type {unknown} */ entry) => printRow(entryBytes(entry))),
  );
  const wanted = { dossier: join(folder, `x${files}.pdf`), ledger, facts: yaml, builtAt: AT };
  const { bag, done } = beginBag(record, wanted);
  await (await done).place();
  await record.close();
  const originals = (await readdir(join(path, 'originals'))).map((one) => join(path, 'originals', one));
  return { record: path, bag: bag.file, originals };
}

/** @param {number} i @param {{ bytes: number, sha256: string }} file */
function evidence(i, { bytes, sha256 }) {
  return {
    kind: 'document',
    evidence: `e${i + 1}`,
    time: { is: 'none', why: 'made for a sample' },
    flags: [],
    file: { name: `${i}.bin`, bytes, sha256, type: 'application/octet-stream' },
  };
}

/**
 * A signed one-page dossier with `count` originals of `size` bytes inside, and the certificate of its signer in PEM.
 * @param {string} folder @param {number} count @param {number} size
 */
export async function makeDossier(folder, count, size) {
  const { PDFDocument } = await import('pdf-lib');
  const { canonicalBytes } = await dist('core/ledger/canonical.js');
  const { sha256Of } = await dist('core/ledger/tree.js');
  const { buildManifest } = await dist('signing/manifest.js');
  const { signPdf } = await dist('signing/sign-pdf.js');
  const { newIdentity } = await dist('signing/identity.js');
  const files = Array.from({ length: count }, () => randomBytes(size));
  const by = 'sample';
  const filed = files.map((bytes, i) => evidence(i, { bytes: bytes.length, sha256: sha256Of(bytes) }));
  const facts = { sha256: sha256Of(Buffer.from('x')), facts: FACTS };
  const entries = [
    { seq: 0, at: AT, by, type: 'delivery-facts', body: facts },
    ...filed.map((body, i) => ({ seq: i + 1, at: AT, by, type: 'evidence-received', body })),
  ].map(canonicalBytes);
  const rules = Buffer.from('x');
  const type = 'application/octet-stream';
  const attachments = [
    {
      name: 'ledger.jsonl',
      bytes: Buffer.from(entries.map((entry) => `${Buffer.from(entry)}\n`).join('')),
      type: 'application/jsonl',
      what: 'ledger',
    },
    { name: 'rule-set.yaml', bytes: rules, type: 'application/yaml', what: 'rule-set' },
    ...files.map((bytes, i) => ({ name: `x${i}.bin`, bytes, type, what: 'original' })),
  ];
  const exhibits = filed.map(({ kind, evidence: id, file }, i) => ({
    exhibit: i + 1,
    evidence: id,
    seq: i + 1,
    kind,
    file,
    attachedAs: `x${i}.bin`,
  }));
  const { bytes: manifest } = buildManifest({
    delivery: FACTS.delivery,
    builtAt: AT,
    tool: { name: 'sample', version: '0' },
    entries,
    ruleSet: { name: 'x', version: '1', bytes: rules },
    exhibits,
    attachments,
    leftOut: [],
  });
  const document = await PDFDocument.create();
  document.addPage([300, 200]);
  for (const { name, bytes } of [...attachments, { name: 'manifest.json', bytes: manifest }])
    await document.attach(bytes, name, { description: name });
  const passphrase = 'only for a sample';
  const now = new Date(AT);
  const { identity, files: pem } = await newIdentity({
    name: 'Sample',
    passphrase,
    now,
    random: randomBytes,
  });
  const file = join(folder, `dossier-${count}.pdf`);
  const saved = await document.save();
  await writeFile(file, await signPdf(saved, identity, { at: AT, random: randomBytes }));
  return { dossier: file, identity, certificate: pem.certificates };
}

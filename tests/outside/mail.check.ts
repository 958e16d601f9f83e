import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { afterAll, expect } from 'vitest';
import { openArchive } from '../../src/intake/archive.js';
import { readMail } from '../../src/intake/email.js';
import { checkWith, type Program, scratch } from './programs.js';

/** Python's own `email` and `zipfile`: other programs, by other people, from the same standards. */
const found = spawnSync('python3', ['--version']).status === 0;
const python: Program = { name: 'python3', command: found ? ['python3'] : undefined };
const here = scratch();
afterAll(() => here.end());

function runPython(script: string, ...args: string[]): unknown {
  const done = spawnSync('python3', ['-c', script, ...args], { encoding: 'utf8' });
  if (done.status !== 0) throw new Error(done.stderr);
  return JSON.parse(done.stdout);
}

const sha256 = (bytes: Uint8Array) => createHash('sha256').update(bytes).digest('hex');

const MAKE_MAILS = `
import json, os, sys, hashlib
from email.message import EmailMessage
from email import policy, message_from_bytes
from email.utils import parsedate_to_datetime
folder = sys.argv[1]
cases = [
  ('Plain', 'Tue, 14 Jul 2026 05:12:00 -0700', [('bill.pdf', b'%PDF-1.7 bill')]),
  ('Añejo – 4711', 'Thu, 16 Jul 2026 06:35:10 +0545', [('täg.jpg', bytes(range(256)) * 50), ('b.txt', b'line\\r\\nline')]),
  ('x' * 300, 'Sun, 01 Nov 2026 01:30:00 +0000', []),
  ('shown in it', 'Tue, 14 Jul 2026 05:12:00 -0700', [('inline-readings.txt', b'04:10 pulp 34.2F\\n'), ('c.pdf', b'%PDF-1.7')]),
  ('two alike', '14 Jul 2026 23:59:59 EST', [('a.bin', b'1'), ('a.bin', b'2')]),
]
said = []
for i, (subject, date, attached) in enumerate(cases):
  m = EmailMessage(policy=policy.SMTP)
  m['From'] = 'D. Windle <d@example.com>'; m['To'] = 'm@example.com'; m['Subject'] = subject; m['Date'] = date
  m.set_content('See attached – é')
  for name, data in attached:
    if name.startswith('inline'): m.add_attachment(data.decode(), cte='base64', disposition='inline', filename=name)
    else: m.add_attachment(data, maintype='application', subtype='octet-stream', filename=name)
  raw = m.as_bytes(); path = os.path.join(folder, f'{i}.eml'); open(path, 'wb').write(raw)
  back = message_from_bytes(raw, policy=policy.default)
  said.append({'path': path, 'subject': str(back['subject']), 'seconds': parsedate_to_datetime(str(back['date'])).timestamp(),
    'names': [p.get_filename() for p in back.iter_attachments()],
    'hashes': [hashlib.sha256(p.get_payload(decode=True)).hexdigest() for p in back.iter_attachments()]})
print(json.dumps(said))
`;

checkWith(python, 'says the same of e-mails that it writes', async () => {
  const mails = runPython(MAKE_MAILS, here.folder) as {
    path: string;
    subject: string;
    seconds: number;
    names: string[];
    hashes: string[];
  }[];
  expect(mails).toHaveLength(5);
  for (const { path, subject, seconds, names, hashes } of mails) {
    const mail = await readMail(path, path);
    expect(mail.subject).toBe(subject);
    expect(mail.time).toMatchObject({ is: 'known', instant: new Date(seconds * 1000).toISOString() });
    expect(mail.attachments.map(({ name }) => name)).toEqual(names);
    expect(mail.attachments.map(({ bytes }) => sha256(bytes))).toEqual(hashes);
  }
});

const MAKE_ZIP = `
import json, sys, zipfile, hashlib
path = sys.argv[1]
with zipfile.ZipFile(path, 'w') as z:
  for i, (name, data) in enumerate([('a.txt', b'plain'), ('dir/é ñ.jpg', bytes(range(256)) * 999), ('empty', b''), ('日本/長.txt', b'x' * 5000)]):
    z.writestr(zipfile.ZipInfo(name), data, zipfile.ZIP_DEFLATED if i % 2 else zipfile.ZIP_STORED)
with zipfile.ZipFile(path) as z:
  print(json.dumps([[i.filename, i.file_size, hashlib.sha256(z.read(i)).hexdigest()] for i in z.infolist()]))
`;

checkWith(python, 'lists and unpacks the same of a zip file that it writes', async () => {
  const path = here.put('made.zip', '');
  const listed = runPython(MAKE_ZIP, path);
  const archive = await openArchive(path, 'made.zip');
  const own: [string, number, string][] = [];
  for (const { name, bytes, read } of archive.entries) {
    const parts: Uint8Array[] = [];
    for await (const part of read()) parts.push(part);
    own.push([name, bytes, sha256(Buffer.concat(parts))]);
  }
  archive.close();
  expect(archive.problems).toEqual([]);
  expect(own).toEqual(listed);
});

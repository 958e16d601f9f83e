import { createHash } from 'node:crypto';
import type { Delivery } from '../core/model/delivery.js';
import type { Problem } from '../core/model/error.js';
import type { FileRef } from '../core/model/evidence.js';
import { omitUndefined } from '../core/model/omit-undefined.js';
import { openArchive } from './archive.js';
import { problemOfKeptFile } from './document.js';
import type { ExaminedFile, Hint } from './draft.js';
import { type MailRead, readMail } from './email.js';

interface ContainerInput {
  path: string;
  file: FileRef;
  delivery: Delivery;
  hint: Hint;
}

/** An archive is kept as a document; its files are passed on to be recorded by themselves. */
export async function examineArchive({ path, file, hint }: ContainerInput): Promise<ExaminedFile> {
  const archive = await openArchive(path, file.name);
  const { entries, skipped, problems, close } = archive;
  const damaged = problems.find((problem) => problem.code === 'unreadable-file');
  return {
    received: {
      kind: 'document',
      file,
      time: { is: 'none', why: 'an archive carries no time of its own that can be relied on' },
      flags: damaged === undefined ? [] : [{ is: 'damaged', detail: damaged.message }],
      ...hint,
    },
    readings: [],
    problems,
    takenFor: `archive of ${counted(entries.length, 'file')}`,
    inside: {
      files: entries.map(({ name, bytes, read }) => ({ entry: name, bytes, read })),
      skipped,
      close,
    },
  };
}

/** An e-mail is a message at the time stated by its sender's program; its attachments are passed on. */
export async function examineMail({ path, file, hint }: ContainerInput): Promise<ExaminedFile> {
  let mail: MailRead;
  try {
    mail = await readMail(path, file.name);
  } catch (error) {
    const problem = problemOfKeptFile(error, file.name);
    return {
      received: {
        kind: 'document',
        file,
        time: { is: 'none', why: 'the e-mail could not be read' },
        flags: [{ is: 'damaged', detail: problem.message }],
        subject: { is: 'message', sure: 'proposed', from: 'e-mail' },
        ...hint,
      },
      readings: [],
      problems: [problem],
      takenFor: 'document: an e-mail that could not be read, kept as it is',
    };
  }
  const { from, attachments, leftInside } = mail;
  const heading = mailHeading(mail);
  const problems: Problem[] = leftInside.map(({ name, why }) => ({
    code: 'unsupported-file',
    message: `the attachment "${name}" stays in the e-mail: ${why}`,
    where: { file: file.name },
  }));
  return {
    received: {
      kind: 'document',
      file,
      time: mail.time,
      flags: [],
      ...omitUndefined({ by: from?.slice(0, 200) }),
      ...hint,
      subject: hint.subject ?? { is: 'message', sure: 'proposed', from: 'e-mail' },
      caption: (hint.caption === undefined ? heading : `${hint.caption} (${heading})`).slice(0, 2000),
    },
    readings: [],
    problems,
    takenFor: `e-mail${from === undefined ? '' : ` from ${from}`}${attachments.length === 0 ? '' : ` with ${counted(attachments.length, 'attachment')}`}`,
    inside: {
      files: named(attachments).map(({ name, bytes }) => ({
        entry: name,
        bytes: bytes.length,
        read: () => oneChunk(bytes),
        caption: `Attached to an e-mail${from === undefined ? '' : ` from ${from}`}${mail.subject === undefined ? '' : `: ${mail.subject}`}`,
      })),
      skipped: [],
      close: () => undefined,
    },
  };
}

function mailHeading({ from, to, subject, time }: MailRead): string {
  const parts = [
    from === undefined ? 'E-mail' : `E-mail from ${from}`,
    to === undefined ? '' : ` to ${to}`,
    subject === undefined ? '' : `: ${subject}`,
    time.is === 'known' ? '. Its time is what the sender’s program wrote.' : '.',
  ];
  return parts.join('');
}

/** Repeated names get the beginning of their bytes' hash, so that each entry can be found again. */
function named(attachments: MailRead['attachments']): MailRead['attachments'] {
  const count = new Map<string, number>();
  for (const { name } of attachments) count.set(name, (count.get(name) ?? 0) + 1);
  return attachments.map(({ name, bytes }) =>
    (count.get(name) ?? 0) < 2
      ? { name, bytes }
      : { name: `${createHash('sha256').update(bytes).digest('hex').slice(0, 8)}-${name}`, bytes },
  );
}

async function* oneChunk(bytes: Uint8Array): AsyncIterable<Uint8Array> {
  yield bytes;
}

function counted(n: number, what: string): string {
  return `${n} ${what}${n === 1 ? '' : 's'}`;
}

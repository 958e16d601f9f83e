import { DossierError } from '../core/model/error.js';
import { type Instant, milliseconds } from '../core/model/time.js';
import type { DossierDocument } from '../core/words/blocks.js';
import { fontFiles } from './glyphs.js';
import { type Typeset, Typesetter } from './typesetter.js';

export type { SignaturePlace, Typeset } from './typesetter.js';

export type Relationship = 'source' | 'data' | 'alternative' | 'supplement';
export interface Attachment {
  /** Flat ASCII name inside the PDF. */
  name: string;
  bytes: Uint8Array;
  /** Media type. */
  type: string;
  description: string;
  relationship: Relationship;
}

/** A typesetting job, as data; for a dossier by default. */
export interface TypesetJob<D extends object = DossierDocument> {
  /** Folder with main.typ and what it imports. */
  pages: string;
  /** Folder whose files replace those of the same name. */
  own?: string;
  document: D;
  /** Pictures and charts by name. */
  assets: ReadonlyMap<string, Uint8Array>;
  attachments: readonly Attachment[];
  builtAt: Instant;
  /** PDF/A-3a is what dossiers are; PDF/UA-1 proves that the same pages are accessible. */
  standard?: 'a-3a' | 'ua-1';
  timeoutSeconds?: number;
}

const NAME = /^[A-Za-z0-9][A-Za-z0-9._-]{0,120}$/;

/**
 * Typesets a document in a process of its own.
 * @param typesetter a process started before; it ends with the document Throws DossierError `typesetting` when it
 * fails, warns, crashes or takes too long.
 */
export async function typeset<D extends object>(
  job: TypesetJob<D>,
  typesetter = new Typesetter(),
): Promise<Typeset> {
  try {
    return await typesetBy(typesetter, job);
  } finally {
    typesetter.stop();
  }
}

async function typesetBy<D extends object>(typesetter: Typesetter, job: TypesetJob<D>): Promise<Typeset> {
  checkAttachments(job.attachments);
  const answer = await typesetter.ask(
    {
      pages: job.pages,
      own: job.own,
      fonts: fontFiles(),
      document: JSON.stringify({
        ...job.document,
        attachments: job.attachments.map(({ name, type, description, relationship }) => ({
          name,
          type,
          description,
          relationship,
        })),
      }),
      assets: [...job.assets],
      attachments: job.attachments.map(({ name, bytes }) => [name, bytes]),
      createdSeconds: Math.floor(milliseconds(job.builtAt) / 1000),
      standard: job.standard ?? 'a-3a',
    },
    job.timeoutSeconds,
  );
  if ('error' in answer && answer.at !== undefined)
    throw new DossierError('bad-template', `the pages can't be set: ${answer.error}`, {
      where: answer.at,
      fix: 'Compare the file with the shipped one of that name in templates/dossier.',
    });
  if ('error' in answer)
    throw new DossierError('typesetting', `the pages can't be set: ${answer.error}`, {
      where: { file: job.pages },
      fix: 'If you changed the page templates, compare them with the shipped ones; otherwise please report this.',
    });
  return answer;
}

/**
 * An empty attachment aborts the typesetter's process, and a repeated name its compilation: both are reported
 * first.
 */
function checkAttachments(attachments: readonly Attachment[]): void {
  const seen = new Set<string>();
  for (const { name, bytes } of attachments) {
    const refuse = (message: string, fix: string) =>
      new DossierError('typesetting', message, { where: { file: name }, fix });
    if (bytes.length === 0)
      throw refuse(`"${name}" is empty and can't be attached`, 'Leave it out and list it by its hash.');
    if (!NAME.test(name))
      throw refuse(
        `"${name}" is no name for an attachment`,
        'Use ASCII letters, digits, dot, dash and underscore.',
      );
    if (seen.has(name.toLowerCase()))
      throw refuse(`"${name}" is attached twice`, 'Give each attachment its own name.');
    seen.add(name.toLowerCase());
  }
}

import { readFile } from 'node:fs/promises';
import { z } from 'zod';
import { OPTIONAL_SECTIONS } from '../../compose/sections.js';
import type { Language } from '../../core/model/delivery.js';
import { DossierError } from '../../core/model/error.js';
import { evidence, subjectName } from '../../core/model/evidence.js';
import { readYamlAs } from '../../intake/yaml.js';

const optionalSection = z.enum(OPTIONAL_SECTIONS);
const kind = z.enum(evidence.options.map((one) => one.shape.kind.value));

/** The reader of a copy, as printed after "Copy for". */
const title = z.string().min(1).max(120);

export const redactedCopy = z.strictObject({
  title: z.union([title, z.strictObject({ en: title, es: title.exactOptional() })]),
  leaveOut: z
    .strictObject({
      sections: z.array(optionalSection).default([]),
      kinds: z.array(kind).default([]),
      subjects: z.array(subjectName).default([]),
      /** Whether claim notes are redacted: the carrier's own calculations are not for the other side. */
      claims: z.boolean().default(false),
    })
    .prefault({}),
  positions: z.boolean(),
  /** Whether the carrier's own assessment may go to this reader. */
  assessment: z.boolean().default(false),
});
export type RedactedCopy = z.infer<typeof redactedCopy> & { name: string };

/** The reader of a copy in a language; in English where there are no words. */
export function titleIn({ title: words }: RedactedCopy, language: Language): string {
  return typeof words === 'string' ? words : (words[language] ?? words.en);
}

const copies = z.record(z.string().regex(/^[a-z][a-z0-9-]{0,30}$/), redactedCopy);

/** The carrier's own dossier, which is not redacted. */
export const OWN_DOSSIER = 'own';

/**
 * The copy of that name; undefined for the carrier's own dossier. Throws DossierError `bad-template` for an invalid
 * file, `bad-usage` for a name it lacks.
 */
export async function readCopy(file: string, name: string): Promise<RedactedCopy | undefined> {
  if (name === OWN_DOSSIER) return undefined;
  const text = await readFile(file, 'utf8');
  const { read } = readYamlAs(copies, text, file, 'bad-template');
  const found = read[name];
  if (found !== undefined) return { ...found, name };
  const choices = [OWN_DOSSIER, ...Object.keys(read)];
  throw new DossierError('bad-usage', `there is no copy "${name}"`, {
    where: { field: '--for' },
    fix: `Use one of ${choices.join(', ')}, or add it to copies.yaml in a folder of your own (--templates).`,
    choices,
  });
}

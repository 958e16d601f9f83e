import { z } from 'zod';
import { Workers } from '../../platform/node/worker/workers.js';

const mailbox = z.object({ name: z.string(), address: z.string() });
const address = z.union([mailbox, z.object({ name: z.string(), group: z.array(mailbox) })]);
const attachment = z.object({
  filename: z.string().nullish(),
  mimeType: z.string(),
  content: z.union([z.string(), z.instanceof(Uint8Array), z.instanceof(ArrayBuffer)]),
});
/** The parts of a mail that are used. */
const mail = z.object({
  headers: z.array(z.object({ key: z.string(), value: z.string() })),
  from: address.optional(),
  to: z.array(address).optional(),
  subject: z.string().optional(),
  text: z.string().optional(),
  attachments: z.array(attachment),
});
export type Address = z.infer<typeof address>;
export type Attachment = z.infer<typeof attachment>;
export type Mail = z.infer<typeof mail>;

/** Nesting of MIME parts; a mail forwarded many times has a dozen. */
const MOST_NESTING = 40;

/** One at a time: parsing takes several times a mail's size in memory. */
const mailReader = new Workers<{ bytes: Uint8Array; nesting: number }, Mail>({
  script: new URL('./take-apart.worker.js', import.meta.url),
  runs: 'thread',
  seconds: 20,
  megabytes: 512,
  answer: mail,
  reused: true,
});

/** Parses an e-mail (RFC 5322, MIME). @throws WorkerError when that cannot be done within twenty seconds */
export function takeApart(bytes: Uint8Array): Promise<Mail> {
  return mailReader.ask({ bytes, nesting: MOST_NESTING });
}

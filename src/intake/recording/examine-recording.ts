import { z } from 'zod';
import type { Delivery } from '../../core/model/delivery.js';
import type { Problem } from '../../core/model/error.js';
import type { FileRef } from '../../core/model/evidence.js';
import { omitUndefined } from '../../core/model/omit-undefined.js';
import { type EventTime, toInstant } from '../../core/model/time.js';
import { zoneRules } from '../../core/model/zone-rules.js';
import { Workers } from '../../platform/node/worker/workers.js';
import type { Hint, ReceivedDraftOf } from '../draft.js';
import { dayOfFileName } from '../time/file-name-day.js';

interface RecordingInput {
  path: string;
  file: FileRef;
  delivery: Delivery;
  hint: Hint;
}

const said = z.object({
  container: z.string().optional(),
  seconds: z.number().nonnegative().optional(),
  created: z.number().optional(),
  hasVideo: z.boolean().optional(),
});
type Said = z.infer<typeof said>;

const reader = new Workers<{ path: string }, Said>({
  script: new URL('./recording.worker.js', import.meta.url),
  runs: 'thread',
  seconds: 10,
  megabytes: 256,
  answer: said,
});

/** Containers count from 1904; a clock that was never set writes that, or 1970. */
const FIRST_POSSIBLE = Date.UTC(2000, 0, 1);
const TO_THE_MINUTE = 60;

/**
 * A film or a spoken message, kept as a document with its length and the time that its container states. It is neither
 * written down nor shown as a picture: that is for a person, who says in a statement what is heard and seen.
 */
export async function examineRecording({ path, file, delivery, hint }: RecordingInput): Promise<{
  received: ReceivedDraftOf<'document'>;
  problems: Problem[];
  takenFor: string;
}> {
  const { read, problems } = await readRecording(path, file);
  const seconds = read.seconds === undefined ? undefined : Math.round(read.seconds);
  const stop = delivery.stops.find(({ id }) => id === hint.place?.stop);
  const own = containerTime(read, delivery);
  const time: EventTime = own ??
    hint.time ??
    dayOfFileName(file.name, delivery, stop) ?? {
      is: 'none',
      why: 'the recording does not say when it was made',
    };
  const what = file.type.startsWith('video/') ? 'film' : 'sound';
  return {
    received: {
      kind: 'document',
      file,
      flags: [],
      ...hint,
      time,
      ...omitUndefined({ seconds }),
    },
    problems,
    takenFor: `document: ${what}${seconds === undefined ? '' : ` of ${seconds} s`}, not written down`,
  };
}

async function readRecording(path: string, file: FileRef): Promise<{ read: Said; problems: Problem[] }> {
  try {
    return { read: await reader.ask({ path }), problems: [] };
  } catch {
    const problem: Problem = {
      code: 'unreadable-file',
      message: 'what it says of itself cannot be read; its bytes are kept as they are',
      where: { file: file.name },
      fix: 'say when it was made: dossier describe EVIDENCE --time TIME',
    };
    return { read: {}, problems: [problem] };
  }
}

/**
 * The creation time of the container (ISO/IEC 14496-12 §8.2.2): UTC by the standard, but some devices write their local
 * time (from memory), and some the end of the recording. The uncertainty covers both.
 */
function containerTime({ created, seconds = 0 }: Said, { stops }: Delivery): EventTime | undefined {
  const [first] = stops;
  if (created === undefined || created < FIRST_POSSIBLE || first === undefined) return undefined;
  const offsets = stops.map(({ zone }) => Math.abs(zoneRules(zone).offset(created)) * 60);
  return {
    is: 'known',
    instant: toInstant(created),
    zone: first.zone,
    basis: 'container',
    uncertaintySeconds: Math.ceil(TO_THE_MINUTE + seconds + Math.max(...offsets)),
    stated: toInstant(created),
  };
}

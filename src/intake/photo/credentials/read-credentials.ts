import { z } from 'zod';
import type { ContentCredentials } from '../../../core/model/evidence.js';
import { omitUndefined } from '../../../core/model/omit-undefined.js';
import { WorkerError } from '../../../platform/node/worker/worker-error.js';
import { Workers } from '../../../platform/node/worker/workers.js';
import { carriesCredentials } from './carries.js';

/** The parts of a manifest store that are used. */
const status = z.object({ code: z.string() });
const action = z.object({ action: z.string() });
const manifest = z.object({
  claim_generator: z.string().optional(),
  claim_generator_info: z.array(z.object({ name: z.string() })).nullish(),
  title: z.string().nullish(),
  assertions: z.array(z.object({ label: z.string(), data: z.unknown() })).default([]),
  signature_info: z
    .object({
      issuer: z.string().nullish(),
      common_name: z.string().nullish(),
      time: z.string().nullish(),
    })
    .nullish(),
});
const store = z.object({
  active_manifest: z.string().optional(),
  manifests: z.record(z.string(), manifest).default({}),
  validation_state: z.string().optional(),
  validation_status: z.array(status).nullish(),
  validation_results: z
    .object({
      activeManifest: z.object({ success: z.array(status), failure: z.array(status) }).nullish(),
    })
    .nullish(),
});
type Store = z.infer<typeof store>;

const SECONDS = 20;
/** The library takes a file whole. */
const reader = new Workers<{ path: string; type: string }, Store>({
  script: new URL('./credentials.worker.js', import.meta.url),
  runs: 'thread',
  seconds: SECONDS,
  megabytes: 512,
  answer: store,
  reused: true,
});

/**
 * The content credentials (C2PA) of a picture as far as they can be checked here: whether the picture is as it was
 * signed, what the signer claims of it, and who the signer says to be. No list of trusted signers is shipped, so a
 * signature shows that nothing was changed since, not that what it claims is true. Undefined for a picture that carries
 * none; never throws for a bad one. A check that takes too long, `seconds` if given, is told as not made.
 */
export async function readCredentials(
  path: string,
  type: string,
  options: { seconds?: number } = {},
): Promise<ContentCredentials | undefined> {
  if (!carriesCredentials(path, type)) return undefined;
  try {
    return judged(await reader.ask({ path, type }, options));
  } catch (cause) {
    // A check that was given up shows nothing of the picture: only what the library says of it is a finding on it.
    const refused = cause instanceof WorkerError && cause.is === 'refused';
    return {
      state: refused ? 'unreadable' : 'not-checked',
      findings: [short(cause instanceof Error ? cause.message : String(cause))],
    };
  }
}

/** Says of the signer that nobody here vouches for him, not that the picture was changed. */
const UNTRUSTED = 'signingCredential.untrusted';
const STAMPED = new Set(['timeStamp.validated', 'timeStamp.trusted']);

function judged({
  active_manifest,
  manifests,
  validation_state,
  validation_status,
  validation_results,
}: Store) {
  const active = active_manifest === undefined ? undefined : manifests[active_manifest];
  const results = validation_results?.activeManifest;
  const failed = new Set([...(results?.failure ?? []), ...(validation_status ?? [])].map(({ code }) => code));
  const passed = new Set((results?.success ?? []).map(({ code }) => code));
  const intact = validation_state === 'Valid' || validation_state === 'Trusted';
  const signature = active?.signature_info;
  const name = signature?.common_name ?? signature?.issuer;
  const made = active?.claim_generator ?? active?.claim_generator_info?.[0]?.name;
  const credentials: ContentCredentials = {
    state: intact ? 'intact' : 'broken',
    ...omitUndefined({
      claims:
        active === undefined
          ? undefined
          : omitUndefined({
              madeWith: made && short(made),
              title: active.title ? short(active.title) : undefined,
              actions: actionsOf(active),
            }),
      signer: signature
        ? omitUndefined({
            name: name ? short(name) : undefined,
            issuer: signature.issuer ? short(signature.issuer) : undefined,
            signedAt: signature.time ? short(signature.time) : undefined,
            stamped: [...STAMPED].some((code) => passed.has(code)),
            trusted: validation_state === 'Trusted' && !failed.has(UNTRUSTED),
          })
        : undefined,
    }),
    findings: [...failed]
      .filter((code) => code !== UNTRUSTED)
      .slice(0, 20)
      .map(short),
  };
  return credentials;
}

/** What is said to have been done to the picture, such as `c2pa.created`, in the order told. */
function actionsOf({ assertions }: z.infer<typeof manifest>): string[] {
  return assertions
    .filter(({ label }) => label.startsWith('c2pa.actions'))
    .flatMap(({ data }) => {
      const read = z.object({ actions: z.array(action) }).safeParse(data);
      return read.success ? read.data.actions.map((one) => short(one.action)) : [];
    })
    .slice(0, 40);
}

const short = (text: string): string =>
  text
    .replaceAll(/[\p{Cc}\s]+/gu, ' ')
    .trim()
    .slice(0, 200);

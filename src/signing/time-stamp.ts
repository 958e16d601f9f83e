import { setTimeout as sleep } from 'node:timers/promises';
import { DossierError } from '../core/model/error.js';
import { omitUndefined } from '../core/model/omit-undefined.js';
import type { TimeStampClient } from '../core/ports/time-stamps.js';

/** A time-stamp server that is asked over HTTP (RFC 3161 §3.4). */
export interface HttpTimeStamps {
  /** Address, http or https. */
  url: string;
  /** Dotted identifier of the policy asked for; the server's own when left out. */
  policy?: string;
  /** Milliseconds for each try; 15,000 if not given. */
  timeout?: number;
  /** How often it is tried when the server cannot be reached or is busy; 3 if not given. */
  tries?: number;
}

const TIMEOUT = 15_000;
const LARGEST_ANSWER = 200_000;

/**
 * The client of a time-stamp server on the network. Only a hash is sent.
 * @throws DossierError time-stamp, also from `request`, naming the server and what it said
 */
export function httpTimeStamps(server: HttpTimeStamps): TimeStampClient {
  const where = { field: 'time-stamp server', file: server.url };
  const url = URL.canParse(server.url) ? new URL(server.url) : undefined;
  if (url === undefined || (url.protocol !== 'http:' && url.protocol !== 'https:'))
    throw new DossierError('time-stamp', 'this is not an address of a time-stamp server', {
      where,
      fix: 'Give one like https://tsa.example.org/tsr.',
    });
  const { policy } = server;
  return {
    name: server.url,
    ...omitUndefined({ policy }),
    async request(order) {
      const { requestBytes, tokenOf } = await import('./time-stamp-messages.js');
      const answer = await tryOften(server, url, requestBytes(order, policy), order.signal);
      return tokenOf(answer, where);
    },
  };
}

async function tryOften(
  server: HttpTimeStamps,
  url: URL,
  request: Uint8Array,
  signal: AbortSignal | undefined,
): Promise<Uint8Array> {
  const tries = server.tries ?? 3;
  for (let turn = 1; ; turn += 1) {
    const result = await post(url, request, server.timeout ?? TIMEOUT, signal);
    if (result.is === 'answer') return result.bytes;
    if (!result.again || turn >= tries)
      throw new DossierError('time-stamp', `the time-stamp server ${result.why}`, {
        where: { file: server.url },
        fix: 'Check the address and the network and run the command again, or leave the time stamp out.',
      });
    await sleep(250 * 2 ** (turn - 1), undefined, { signal }).catch(() => signal?.throwIfAborted());
  }
}

type Posted = { is: 'answer'; bytes: Uint8Array } | { is: 'trouble'; why: string; again: boolean };

async function post(
  url: URL,
  request: Uint8Array,
  timeout: number,
  signal: AbortSignal | undefined,
): Promise<Posted> {
  const late = AbortSignal.timeout(timeout);
  try {
    const response = await fetch(url, {
      method: 'POST',
      headers: { 'content-type': 'application/timestamp-query' },
      body: Buffer.from(request),
      redirect: 'error',
      signal: signal === undefined ? late : AbortSignal.any([late, signal]),
    });
    if (!response.ok)
      return {
        is: 'trouble',
        why: `answered ${response.status}`,
        again: response.status >= 500 || response.status === 429,
      };
    return await readSome(response);
  } catch (error) {
    signal?.throwIfAborted();
    const why = late.aborted
      ? `did not answer within ${timeout / 1000} s`
      : `cannot be reached (${reason(error)})`;
    return { is: 'trouble', why, again: true };
  }
}

function reason(error: unknown): string {
  const cause = error instanceof Error ? (error.cause ?? error) : error;
  if (cause instanceof Error && 'code' in cause) return String(cause.code);
  return cause instanceof Error ? cause.message : 'no reason given';
}

/** A server that never stops sending must not fill the memory. */
async function readSome(response: Response): Promise<Posted> {
  const chunks: Uint8Array[] = [];
  let size = 0;
  if (response.body !== null)
    for await (const chunk of response.body) {
      size += chunk.length;
      if (size > LARGEST_ANSWER) return { is: 'trouble', why: 'answered with too much', again: false };
      chunks.push(chunk);
    }
  return { is: 'answer', bytes: Buffer.concat(chunks) };
}

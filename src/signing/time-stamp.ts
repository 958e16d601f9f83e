import { setTimeout as sleep } from 'node:timers/promises';
import * as asn1js from 'asn1js';
import { DossierError } from '../core/model/error.js';
import { omitUndefined } from '../core/model/omit-undefined.js';
import type { TimeStampClient, TimeStampOrder } from '../core/ports/time-stamps.js';
import { OID } from '../core/verify/cms/asn1.js';
import { ownBuffer } from './certificate.js';

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
    request: async (order) =>
      tokenOf(await tryOften(server, url, requestBytes(order, policy), order.signal), where),
  };
}

/** TimeStampReq (RFC 3161 §2.4.1); asks for the certificate to come along. */
function requestBytes({ digest, nonce }: TimeStampOrder, policy: string | undefined): Uint8Array {
  const request = new asn1js.Sequence({
    value: [
      new asn1js.Integer({ value: 1 }),
      new asn1js.Sequence({
        value: [
          new asn1js.Sequence({
            value: [new asn1js.ObjectIdentifier({ value: OID.sha256 }), new asn1js.Null()],
          }),
          new asn1js.OctetString({ valueHex: ownBuffer(digest) }),
        ],
      }),
      ...(policy === undefined ? [] : [new asn1js.ObjectIdentifier({ value: policy })]),
      new asn1js.Integer({ valueHex: ownBuffer(nonce) }),
      new asn1js.Boolean({ value: true }),
    ],
  });
  return new Uint8Array(request.toBER(false));
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

/** TimeStampResp (RFC 3161 §2.4.2): status 0 or 1 with a token. */
function tokenOf(answer: Uint8Array, where: { file: string; field: string }): Uint8Array {
  const refuse = (message: string) =>
    new DossierError('time-stamp', message, {
      where,
      fix: 'Ask another server, or the one who runs this one.',
    });
  const { result, offset } = asn1js.fromBER(ownBuffer(answer));
  if (offset === -1 || !(result instanceof asn1js.Sequence))
    throw refuse('what the time-stamp server answered is no time-stamp answer');
  const [info, token] = result.valueBlock.value;
  const [status, words] = info instanceof asn1js.Sequence ? info.valueBlock.value : [];
  const code = status instanceof asn1js.Integer ? status.valueBlock.valueDec : -1;
  if (code !== 0 && code !== 1) throw refuse(`the time-stamp server refused: status ${code}${spoken(words)}`);
  if (token === undefined) throw refuse('the time-stamp server sent no time stamp');
  return Uint8Array.from(token.valueBeforeDecodeView);
}

/** PKIFreeText, when there is one. */
function spoken(words: asn1js.AsnType | undefined): string {
  if (!(words instanceof asn1js.Sequence)) return '';
  const said = words.valueBlock.value.flatMap((one) =>
    one instanceof asn1js.Utf8String ? [one.valueBlock.value.slice(0, 200)] : [],
  );
  return said.length === 0 ? '' : ` (${said.join(' ')})`;
}

import { createHash, generateKeyPairSync, type KeyObject, sign } from 'node:crypto';
import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { omitUndefined } from '../../src/core/model/omit-undefined.js';
import { readCertificate } from '../../src/core/verify/cms/certificate.js';
import { makeAnyCertificate } from '../core/verify/any-certificate.js';
import { der, OIDS } from '../core/verify/forge.js';

/** What a time-stamp server for tests says and does otherwise than it should. */
export interface TsaTricks {
  at?: Date;
  /** Over other bytes than those asked. */
  imprint?: Uint8Array;
  nonce?: Uint8Array | 'none';
  policy?: Uint8Array;
  digest?: 'sha1' | 'sha256';
  /** Without the use for time stamps in the certificate. */
  plainCertificate?: boolean;
  withoutCertificate?: boolean;
  forged?: boolean;
  /** Issuer and serial number that the token names. */
  signer?: Uint8Array;
  keys?: { publicKey: KeyObject; privateKey: KeyObject };
  status?: number;
  http?: number;
  hang?: boolean;
  /** Fails this often before it answers. */
  failFirst?: number;
  rubbish?: boolean;
}

const oid = (hex: string) => der(0x06, Buffer.from(hex, 'hex'));
const INT = (value: Uint8Array) => der(0x02, value);
const SHA = { sha1: oid('2b0e03021a'), sha256: oid('608648016503040201') };
/** 1.2.3.4 */
const POLICY = oid('2a0304');

export class FakeTsa {
  readonly keys: { publicKey: KeyObject; privateKey: KeyObject };
  readonly certificate: Uint8Array;
  asked = 0;

  constructor(private readonly tricks: TsaTricks = {}) {
    this.keys = tricks.keys ?? generateKeyPairSync('ec', { namedCurve: 'P-256' });
    this.certificate = makeAnyCertificate({
      ...this.keys,
      subject: 'Time office',
      ...omitUndefined({ timeStamps: tricks.plainCertificate === true ? undefined : true }),
    });
  }

  /** A token over bytes, as asked without a nonce. */
  token(bytes: Uint8Array): Uint8Array {
    return this.build(createHash('sha256').update(bytes).digest(), undefined);
  }

  /** TimeStampResp to a TimeStampReq, both DER (RFC 3161 §2.4). */
  answer(request: Uint8Array): Uint8Array {
    const { tricks } = this;
    if (tricks.rubbish === true) return Buffer.from('<html>hello</html>');
    if (tricks.status !== undefined)
      return der(
        0x30,
        der(0x30, INT(Uint8Array.of(tricks.status)), der(0x30, der(0x0c, Buffer.from('no such policy')))),
      );
    const text = Buffer.from(request);
    const at = text.indexOf(Buffer.concat([SHA.sha256])) + SHA.sha256.length;
    const imprint = text.subarray(text.indexOf(Buffer.of(0x04, 0x20), at) + 2).subarray(0, 32);
    const nonceAt = text.lastIndexOf(Buffer.of(0x02, 0x10));
    const nonce = nonceAt < 0 ? undefined : text.subarray(nonceAt + 2, nonceAt + 18);
    return der(0x30, der(0x30, INT(Uint8Array.of(0))), this.build(imprint, nonce));
  }

  private build(imprint: Uint8Array, nonce: Uint8Array | undefined): Uint8Array {
    const { tricks } = this;
    const hash = tricks.digest ?? 'sha256';
    const said = tricks.nonce === 'none' ? undefined : (tricks.nonce ?? nonce);
    const time = (tricks.at ?? new Date()).toISOString().replace(/[-:T]|\.\d{3}/g, '');
    const info = der(
      0x30,
      INT(Uint8Array.of(1)),
      tricks.policy ?? POLICY,
      der(0x30, der(0x30, SHA[hash]), der(0x04, tricks.imprint ?? imprint)),
      INT(Uint8Array.of(7)),
      der(0x18, Buffer.from(time)),
      ...(said === undefined ? [] : [INT(said)]),
    );
    const attributes = [
      der(0x30, OIDS.contentType, der(0x31, OIDS.tstInfo)),
      der(0x30, OIDS.messageDigest, der(0x31, der(0x04, createHash('sha256').update(info).digest()))),
      der(
        0x30,
        OIDS.signingCertificateV2,
        der(
          0x31,
          der(0x30, der(0x30, der(0x30, der(0x04, createHash('sha256').update(this.certificate).digest())))),
        ),
      ),
    ].sort(Buffer.compare);
    const { issuer, serial } = readCertificate(this.certificate);
    const value = sign('sha256', der(0x31, ...attributes), this.keys.privateKey);
    if (tricks.forged === true) value[value.length - 1] = (value[value.length - 1] ?? 0) ^ 1;
    const signer = der(
      0x30,
      INT(Uint8Array.of(1)),
      tricks.signer ?? der(0x30, issuer, serial),
      der(0x30, SHA.sha256),
      der(0xa0, ...attributes),
      der(0x30, OIDS.ecdsaSha256),
      der(0x04, value),
    );
    const data = der(
      0x30,
      INT(Uint8Array.of(3)),
      der(0x31, der(0x30, SHA.sha256)),
      der(0x30, OIDS.tstInfo, der(0xa0, der(0x04, info))),
      ...(tricks.withoutCertificate === true ? [] : [der(0xa0, this.certificate)]),
      der(0x31, signer),
    );
    return der(0x30, OIDS.signedData, der(0xa0, data));
  }

  /** Serves over HTTP on a free port of this machine. */
  async serve(): Promise<{ url: string; end: () => Promise<void> }> {
    const server: Server = createServer((request, response) => {
      this.asked += 1;
      if (this.tricks.hang === true) return;
      const chunks: Buffer[] = [];
      request.on('data', (chunk: Buffer) => chunks.push(chunk));
      request.on('end', () => {
        const busy = this.asked <= (this.tricks.failFirst ?? 0);
        response.statusCode = busy ? 503 : (this.tricks.http ?? 200);
        response.setHeader('content-type', 'application/timestamp-reply');
        response.end(this.answer(Buffer.concat(chunks)));
      });
    });
    await new Promise<void>((done) => server.listen(0, '127.0.0.1', done));
    const address = server.address() as AddressInfo;
    return {
      url: `http://127.0.0.1:${address.port}/tsr`,
      end: () =>
        new Promise((done) => {
          server.closeAllConnections();
          server.close(() => done());
        }),
    };
  }
}

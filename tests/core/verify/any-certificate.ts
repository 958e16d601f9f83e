import { type KeyObject, sign } from 'node:crypto';
import { der } from './forge.js';

export interface AnyCertificate {
  publicKey: KeyObject;
  privateKey: KeyObject;
  subject?: string;
  issuer?: { name: string; key: KeyObject };
  authority?: boolean;
  /** Bits of the first byte of key usage (RFC 5280 §4.2.1.3). */
  usage?: number;
  /** Extended uses (RFC 5280 §4.2.1.12), as the bytes of their identifiers in hex. */
  uses?: readonly string[];
  /** For time stamps alone, marked critical (RFC 3161 §2.3). */
  timeStamps?: boolean;
}

const oid = (hex: string) => der(0x06, Buffer.from(hex, 'hex'));
const name = (words: string) => der(0x30, der(0x31, der(0x30, oid('550403'), der(0x0c, Buffer.from(words)))));
const date = (digits: string) => der(0x17, Buffer.from(digits));
const extension = (hex: string, value: Uint8Array) =>
  der(0x30, oid(hex), der(0x01, Uint8Array.of(0xff)), der(0x04, value));

/** A certificate over any key and from any issuer, also such as the product would never make. */
export function makeAnyCertificate(wanted: AnyCertificate): Uint8Array {
  const subject = wanted.subject ?? 'Somebody';
  const issuer = wanted.issuer ?? { name: subject, key: wanted.privateKey };
  const edwards = issuer.key.asymmetricKeyType === 'ed25519';
  const rsa = issuer.key.asymmetricKeyType === 'rsa';
  const algorithm = edwards
    ? der(0x30, oid('2b6570'))
    : rsa
      ? der(0x30, oid('2a864886f70d01010b'), der(0x05))
      : der(0x30, oid('2a8648ce3d040302'));
  const basic = wanted.authority === true ? der(0x30, der(0x01, Uint8Array.of(0xff))) : der(0x30);
  const tbs = der(
    0x30,
    der(0xa0, der(0x02, Uint8Array.of(2))),
    der(0x02, Uint8Array.of(0x51, wanted.authority === true ? 1 : 2)),
    algorithm,
    name(issuer.name),
    der(0x30, date('260101000000Z'), date('310101000000Z')),
    name(subject),
    wanted.publicKey.export({ type: 'spki', format: 'der' }),
    der(
      0xa3,
      der(
        0x30,
        extension('551d13', basic),
        ...(wanted.usage === undefined
          ? []
          : [extension('551d0f', der(0x03, Uint8Array.of(0, wanted.usage)))]),
        ...(wanted.uses === undefined ? [] : [extension('551d25', der(0x30, ...wanted.uses.map(oid)))]),
        ...(wanted.timeStamps === true ? [extension('551d25', der(0x30, oid('2b06010505070308')))] : []),
      ),
    ),
  );
  const signature = sign(edwards ? null : 'sha256', tbs, issuer.key);
  return der(0x30, tbs, algorithm, der(0x03, Uint8Array.of(0), signature));
}

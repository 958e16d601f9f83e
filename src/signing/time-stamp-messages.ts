import * as asn1js from 'asn1js';
import { DossierError } from '../core/model/error.js';
import type { TimeStampOrder } from '../core/ports/time-stamps.js';
import { OID } from '../core/verify/cms/asn1.js';
import { ownBuffer } from './own-buffer.js';

/** TimeStampReq (RFC 3161 §2.4.1); asks for the certificate to come along. */
export function requestBytes({ digest, nonce }: TimeStampOrder, policy: string | undefined): Uint8Array {
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

/**
 * The token of a TimeStampResp (RFC 3161 §2.4.2): status 0 or 1 with a token.
 * @throws DossierError time-stamp for any other
 */
export function tokenOf(answer: Uint8Array, where: { file: string; field: string }): Uint8Array {
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

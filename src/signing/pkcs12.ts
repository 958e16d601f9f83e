import { createPrivateKey, type KeyObject, X509Certificate } from 'node:crypto';
import forge from 'node-forge';
import * as pkijs from 'pkijs';
import { DossierError } from '../core/model/error.js';
import { ownBuffer } from './own-buffer.js';

/** What a PKCS#12 file (RFC 7292) holds for signing. */
export interface Pkcs12Contents {
  key: KeyObject;
  certificates: X509Certificate[];
}

/**
 * Opens a PKCS#12 file: with AES (PBES2) by one library, with the older RC2 and triple DES by another.
 * @throws DossierError identity when the passphrase is wrong, or there is not exactly one key
 */
export async function readPkcs12(
  bytes: Uint8Array,
  passphrase: string,
  file: string,
): Promise<Pkcs12Contents> {
  const read = (await modern(bytes, passphrase)) ?? legacy(bytes, passphrase);
  // Neither library tells a wrong passphrase from a damaged file for certain, and their words may quote secrets.
  if (read === undefined)
    throw new DossierError('identity', 'The passphrase does not open this PKCS#12 file, or it is damaged.', {
      where: { file },
      fix: 'Check the passphrase. To see whether the file is sound: openssl pkcs12 -info -noout -in FILE',
    });
  const [key, second] = read.keys;
  if (key === undefined || second !== undefined)
    throw new DossierError('identity', `The PKCS#12 file holds ${read.keys.length} keys instead of one.`, {
      where: { file },
      fix: 'Export the one key that signs, with its certificates, into a file of its own.',
    });
  if (read.certificates.length === 0)
    throw new DossierError('identity', 'The PKCS#12 file holds no certificate.', { where: { file } });
  return { key, certificates: read.certificates };
}

interface Found {
  keys: KeyObject[];
  certificates: X509Certificate[];
}

async function modern(bytes: Uint8Array, passphrase: string): Promise<Found | undefined> {
  try {
    const password = ownBuffer(new TextEncoder().encode(passphrase));
    const pfx = pkijs.PFX.fromBER(ownBuffer(bytes));
    await pfx.parseInternalValues({ password, checkIntegrity: true });
    const safe = pfx.parsedValue?.authenticatedSafe;
    if (safe === undefined) return undefined;
    await safe.parseInternalValues({ safeContents: safe.safeContents.map(() => ({ password })) });
    const found: Found = { keys: [], certificates: [] };
    const contents: { value: pkijs.SafeContents }[] = safe.parsedValue.safeContents;
    for (const { value } of contents)
      for (const { bagValue } of value.safeBags) {
        if (bagValue instanceof pkijs.PKCS8ShroudedKeyBag) {
          await Reflect.apply(Reflect.get(bagValue, 'parseInternalValues'), bagValue, [{ password }]);
          if (bagValue.parsedValue !== undefined)
            found.keys.push(pkcs8(new Uint8Array(bagValue.parsedValue.toSchema().toBER(false))));
        } else if (bagValue instanceof pkijs.PrivateKeyInfo)
          found.keys.push(pkcs8(new Uint8Array(bagValue.toSchema().toBER(false))));
        else if (bagValue instanceof pkijs.CertBag && bagValue.parsedValue instanceof pkijs.Certificate)
          found.certificates.push(
            new X509Certificate(new Uint8Array(bagValue.parsedValue.toSchema().toBER(false))),
          );
      }
    return found;
  } catch {
    return undefined;
  }
}

function legacy(bytes: Uint8Array, passphrase: string): Found | undefined {
  try {
    const der = forge.util.createBuffer(Buffer.from(bytes).toString('latin1'));
    const pfx = forge.pkcs12.pkcs12FromAsn1(forge.asn1.fromDer(der), passphrase);
    const found: Found = { keys: [], certificates: [] };
    for (const { safeBags } of pfx.safeContents)
      for (const bag of safeBags) {
        // The library reads RSA alone; every other key and certificate stands raw in `asn1`.
        if (bag.type === forge.pki.oids.pkcs8ShroudedKeyBag || bag.type === forge.pki.oids.keyBag)
          found.keys.push(
            pkcs8(
              raw(
                bag.key != null ? forge.pki.wrapRsaPrivateKey(forge.pki.privateKeyToAsn1(bag.key)) : bag.asn1,
              ),
            ),
          );
        else if (bag.type === forge.pki.oids.certBag)
          found.certificates.push(
            new X509Certificate(raw(bag.cert != null ? forge.pki.certificateToAsn1(bag.cert) : bag.asn1)),
          );
      }
    return found;
  } catch {
    return undefined;
  }
}

function raw(asn1: forge.asn1.Asn1): Uint8Array {
  return Buffer.from(forge.asn1.toDer(asn1).getBytes(), 'latin1');
}

function pkcs8(der: Uint8Array): KeyObject {
  return createPrivateKey({ key: Buffer.from(der), format: 'der', type: 'pkcs8' });
}

/** Object identifiers, named as in RFC 5652, RFC 5754, RFC 5758, RFC 5035, RFC 5280, RFC 8017, RFC 8410 and RFC 3161. */
export const OID = {
  data: '1.2.840.113549.1.7.1',
  signedData: '1.2.840.113549.1.7.2',
  contentType: '1.2.840.113549.1.9.3',
  messageDigest: '1.2.840.113549.1.9.4',
  signingCertificateV2: '1.2.840.113549.1.9.16.2.47',
  signingCertificate: '1.2.840.113549.1.9.16.2.12',
  timeStampInfo: '1.2.840.113549.1.9.16.1.4',
  signatureTimeStamp: '1.2.840.113549.1.9.16.2.14',
  sha256: '2.16.840.1.101.3.4.2.1',
  sha384: '2.16.840.1.101.3.4.2.2',
  sha512: '2.16.840.1.101.3.4.2.3',
  ecdsaWithSha256: '1.2.840.10045.4.3.2',
  ecdsaWithSha384: '1.2.840.10045.4.3.3',
  ecdsaWithSha512: '1.2.840.10045.4.3.4',
  rsaEncryption: '1.2.840.113549.1.1.1',
  sha256WithRsa: '1.2.840.113549.1.1.11',
  sha384WithRsa: '1.2.840.113549.1.1.12',
  sha512WithRsa: '1.2.840.113549.1.1.13',
  mgf1: '1.2.840.113549.1.1.8',
  rsaPss: '1.2.840.113549.1.1.10',
  ecPublicKey: '1.2.840.10045.2.1',
  p256: '1.2.840.10045.3.1.7',
  p384: '1.3.132.0.34',
  p521: '1.3.132.0.35',
  ed25519: '1.3.101.112',
  commonName: '2.5.4.3',
  subjectKeyIdentifier: '2.5.29.14',
  keyUsage: '2.5.29.15',
  basicConstraints: '2.5.29.19',
  authorityKeyIdentifier: '2.5.29.35',
  extendedKeyUsage: '2.5.29.37',
  timeStamping: '1.3.6.1.5.5.7.3.8',
} as const;

/**
 * Extended uses (RFC 5280 §4.2.1.12) that let a certificate sign documents: any, e-mail, documents (RFC 9336), and the
 * two that stood for documents before it. One for web servers alone does not.
 */
export const DOCUMENT_USES: readonly string[] = [
  '2.5.29.37.0',
  '1.3.6.1.5.5.7.3.4',
  '1.3.6.1.5.5.7.3.36',
  '1.2.840.113583.1.1.5',
  '1.3.6.1.4.1.311.10.3.12',
];

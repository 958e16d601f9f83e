import type { Verdict, Verification } from '../model/verification.js';
import { checkAttachments } from './check-attachments.js';
import { checkRecord, type KnownFingerprint } from './check-record.js';
import { checkSignature, type TrustOptions } from './check-signature.js';
import { Checklist } from './checklist.js';
import { activeContent } from './pdf/active-content.js';
import { readPdf, startsAsPdf } from './pdf/file.js';

export interface VerifyOptions extends TrustOptions {
  /** A fingerprint that was received earlier by another way; the record must begin with it. */
  fingerprint?: KnownFingerprint;
}

/**
 * Checks a dossier as a stranger would, with no trust in who made it, and reports every check. Never throws,
 * whatever the bytes are: bytes that are no dossier are `broken`.
 */
export async function verifyDossier(bytes: Uint8Array, options: VerifyOptions = {}): Promise<Verification> {
  const list = new Checklist();
  let found: Pick<Verification, 'signer' | 'fingerprint'> = {};
  try {
    found = run(bytes, list, options);
    list.pass('check.finished', 'all of them');
  } catch (error) {
    // Whatever stops a check must not pass for a good result.
    list.fail('check.finished', `a check stopped on something unforeseen: ${String(error).slice(0, 200)}`);
  }
  return { verdict: verdictOf(list), checks: list.checks(), ...found };
}

function run(
  bytes: Uint8Array,
  list: Checklist,
  options: VerifyOptions,
): Pick<Verification, 'signer' | 'fingerprint'> {
  if (!startsAsPdf(bytes)) {
    list.fail(
      'pdf.header',
      bytes.length === 0 ? 'the file is empty' : 'this is not a PDF, or something stands before it',
    );
    return {};
  }
  list.pass('pdf.header', new TextDecoder('latin1').decode(bytes.subarray(0, 8)).trim());
  const file = list.ask(
    'pdf.structure',
    () => readPdf(bytes),
    ({ objects }) => `${objects.size} objects`,
  );
  if (file === undefined) return {};
  const active = list.ask(
    'pdf.active-content',
    () => activeContent(file),
    () => 'none found',
  );
  if (active !== undefined) list.judge('pdf.active-content', active, 'none found');
  const signer = checkSignature(file, list, options);
  const contents = checkAttachments(file, list);
  const fingerprint = contents === undefined ? undefined : checkRecord(contents, list, options.fingerprint);
  return {
    ...(signer === undefined ? {} : { signer }),
    ...(fingerprint === undefined ? {} : { fingerprint }),
  };
}

function verdictOf(list: Checklist): Verdict {
  if (list.has('failed')) return 'broken';
  return list.has('passed', 'signer.trusted') ? 'intact' : 'intact-signer-not-vouched-for';
}

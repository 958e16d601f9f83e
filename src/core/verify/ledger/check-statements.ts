import type { MergedRecord } from '../../ledger/merge/merged-records.js';
import { signedStatementBytes } from '../../ledger/statement.js';
import { sha256Of } from '../../ledger/tree.js';
import { fromBase64 } from '../../model/bytes.js';
import type { Entry } from '../../model/entry.js';
import { milliseconds } from '../../model/time.js';
import type { CheckResults } from '../check-results.js';
import { validAt } from '../cms/certificate.js';
import { judgeDetached, readDetached, requireBinding } from '../cms/detached.js';
import { splitContents } from '../cms/signed-data.js';
import { Malformed, refuse } from '../malformed.js';
import { isTrusted, readableCertificates } from '../trust.js';

/** The detached signatures of persons under their own statements. */
export async function checkStatements(
  entries: readonly Entry[],
  name: string | undefined,
  results: CheckResults,
  trusted: readonly Uint8Array[],
  merged: readonly MergedRecord[],
): Promise<void> {
  const authorities = readableCertificates(trusted);
  const wrong: string[] = [];
  const open: string[] = [];
  let signed = 0;
  for (const { seq, at, body, type, origin } of entries) {
    if (type !== 'reading-recorded' || body.kind !== 'statement' || body.signature === undefined) continue;
    signed += 1;
    const say = (words: string) => `${body.evidence} (entry ${seq}): ${words}`;
    if (name === undefined) {
      open.push(say('not checked, because the name of the record is not in this copy'));
      continue;
    }
    try {
      const { structure, rest } = splitContents(
        fromBase64(body.signature.cms) ?? refuse('the signature is not in base64'),
      );
      if (rest.length > 0) wrong.push(say('there are bytes after the signature'));
      const read = readDetached(structure);
      requireBinding(read);
      const { algorithms, digest, value } = await judgeDetached(read, [
        // It was signed under the names of the record that it was entered in first.
        signedStatementBytes(merged.find((one) => one.seq === origin?.merge)?.delivery ?? name, {
          ...body,
          evidence: origin?.evidence ?? body.evidence,
        }),
      ]);
      wrong.push(...[...algorithms, ...digest, ...value].map(say));
      const { certificate, embedded } = read;
      if (sha256Of(certificate.der) !== body.signature.certificateSha256)
        wrong.push(say('it names another certificate'));
      const entered = new Date(milliseconds(origin?.at ?? at));
      if (!validAt(certificate, entered)) wrong.push(say(`the certificate was not valid at ${at}`));
      if (!(await isTrusted(certificate, embedded, authorities, entered)))
        open.push(
          say(`signed by ${certificate.subjectLine}, whom none of the certificates you trust vouches for`),
        );
    } catch (error) {
      if (!(error instanceof Malformed)) throw error;
      wrong.push(say(error.message));
    }
  }
  if (signed === 0) results.skip('ledger.statements', 'No statement is signed.');
  else if (wrong.length > 0) results.failIf('ledger.statements', wrong, '');
  else results.noteIf('ledger.statements', open, `${signed} signed statements`);
}

/** Everything that is checked: stable id and what it asks. Grouped by what is looked at, in the order of the report. */
export const CHECKS = {
  'pdf.header': 'The file is a PDF from its first byte',
  'pdf.structure': 'The file was written in one piece, with nothing hidden in it and nothing appended',
  'pdf.hidden': 'Every object of the file is used, and every page is in the order of pages',
  'pdf.active-content': 'Nothing in the file runs, opens or loads anything by itself',
  'pdf.plain-pages': 'The pages are plain: one size of paper, no transparency, no link that draws',
  'signature.present': 'There is exactly one signature',
  'signature.certification': 'The signature certifies the file and forbids every change',
  'signature.range': 'The signature covers every byte but its own',
  'signature.padding': 'The unused room of the signature holds zeros',
  'signature.structure': 'The signature is built as PAdES baseline B-B wants it',
  'signature.algorithms': 'Hash, signature algorithm and key are strong enough',
  'signature.digest': 'The covered bytes have the hash that was signed',
  'signature.certificate': 'The signature names the certificate that it came with',
  'signature.value': 'The signature was made with the key of that certificate',
  'signature.form':
    'The signature is as it was made: no other value that fits too, no time stamp added or removed',
  'signature.time':
    'The signing time is stated, not in the future, and near those of building and of the time stamp',
  'signature.time-stamp': 'A time-stamp server confirms the signing time',
  'time-stamp.trusted': 'The time-stamp server, or its issuer, is one that you trust',
  'certificate.validity': 'The certificate was valid at the claimed signing time',
  'certificate.usage': 'The certificate may be used for signing',
  'signer.trusted': 'The certificate, or its issuer, is one that you trust',
  'attachments.list': 'The attachments can be listed, each under one name',
  'manifest.present': 'The manifest is attached, complete and in canonical form (RFC 8785)',
  'attachments.complete': 'Exactly the attachments of the manifest are inside',
  'attachments.bytes': 'Every attachment has the size and hash of the manifest',
  'record.root': 'The record has the size and tree hash that its leaves give',
  'bag.container': 'The bag can be opened, and every name in it stays inside it',
  'bag.declaration': 'bagit.txt declares a bag of version 1.0 in UTF-8',
  'bag.tags': 'Every tag file has the hash of the tag manifest, and all are listed',
  'bag.complete': 'The payload manifest lists exactly the files of the payload',
  'bag.payload': 'Every file of the payload has the hash of the payload manifest',
  'bag.oxum': 'Size and number of the payload are those that bag-info.txt states',
  'record.files': 'Ledger and checkpoint are there and can be read',
  'ledger.readable': 'The ledger is there, and every line is an entry in canonical form (RFC 8785)',
  'ledger.leaves': 'Every ledger line has the leaf hash of the manifest',
  'ledger.left-out': 'Entries left out of this copy are counted, and their hashes are in the tree',
  'record.checkpoint': 'The checkpoint has the size and tree hash that the ledger gives',
  'ledger.earlier-states':
    'Every earlier fingerprint, time stamp and dossier that the ledger names fits its tree',
  'ledger.merges': 'What was taken over from another record of this delivery is what that record held',
  'ledger.time-stamps': 'The time stamps kept in the ledger are over the states that they name',
  'ledger.times': 'The times of entry run forward',
  'ledger.statements': 'Statements that persons signed are as they signed them',
  'originals.present': 'Every original that the ledger received is there, with its size and hash',
  'originals.others': 'Nothing else lies among the originals',
  'dossiers.known':
    'Every dossier and assessment beside the record is one that the ledger names, byte for byte',
  'exhibits.ledger': 'Every exhibit is the evidence that the ledger received',
  'exhibits.complete':
    'Everything that the ledger received is listed as an exhibit or as left out, and nothing else',
  'exhibits.originals': 'Every exhibit that is a file is attached, or listed as left out',
  'exhibits.active-content':
    'No attached original is a PDF with scripts, actions or references to the outside',
  'plates.listed':
    'Every printed picture is listed with its original, and every listed one is printed as it is',
  'plates.alike': 'Every printed picture is like the original it is said to show, where that is inside',
  'delivery.same': 'Ledger, facts and manifest speak of the same delivery',
  'rule-set.same': 'The attached rule set is the one that was applied',
  'fingerprint.matches': 'The record begins with the one whose fingerprint you have',
  'together.states':
    'All that was given holds one record: the shorter is the beginning of the longer, or was merged into it',
  'together.bag': 'The bag is the one that the signed dossier names',
  'together.originals': 'Every original that the dossier leaves out is in the bag or the record',
  'together.volumes': 'The assessment is over the record that the dossier shows',
  'check.finished': 'Every check came to its end',
} as const;
export type CheckId = keyof typeof CHECKS;

const LEDGER: readonly CheckId[] = [
  'ledger.earlier-states',
  'ledger.merges',
  'ledger.time-stamps',
  'ledger.times',
  'ledger.statements',
];
const RECORD: readonly CheckId[] = [
  'record.files',
  'ledger.readable',
  'record.checkpoint',
  ...LEDGER,
  'originals.present',
  'originals.others',
  'dossiers.known',
  'delivery.same',
  'fingerprint.matches',
];

/** What is asked of each kind of thing. */
export const CHECKS_BY_SUBJECT = {
  dossier: [
    ...idsFrom('pdf.header', 'record.root'),
    'ledger.readable',
    'ledger.leaves',
    'ledger.left-out',
    ...LEDGER,
    ...idsFrom('exhibits.ledger', 'fingerprint.matches'),
    'check.finished',
  ],
  record: [...RECORD, 'check.finished'],
  bag: [...idsFrom('bag.container', 'bag.oxum'), ...RECORD, 'check.finished'],
  together: idsFrom('together.states', 'together.volumes'),
} as const satisfies Record<string, readonly CheckId[]>;

function idsFrom(first: CheckId, last: CheckId): CheckId[] {
  const all = Object.keys(CHECKS).filter(isCheckId);
  return all.slice(all.indexOf(first), all.indexOf(last) + 1);
}

function isCheckId(text: string): text is CheckId {
  return Object.hasOwn(CHECKS, text);
}

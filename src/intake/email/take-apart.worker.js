// Parses an e-mail in a thread that can be stopped, since some mails take minutes and gigabytes.
import PostalMime from 'postal-mime';
import { answering } from '../../platform/node/worker/answering.js';

answering((/** @type {{ bytes: Uint8Array, nesting: number }} */ { bytes, nesting }) =>
  PostalMime.parse(bytes, {
    forceRfc822Attachments: true,
    attachmentEncoding: 'arraybuffer',
    maxNestingDepth: nesting,
  }),
);

// Parses an e-mail in a thread that can be stopped, since some mails take minutes and gigabytes.
import PostalMime from 'postal-mime';
import { answering } from '../../platform/node/worker/answering.js';

/**
 * @typedef {{ parsed: { value: string, params: Record<string, string | undefined> } }} Header
 * @typedef {{ contentDisposition: Header, contentType: Header & { multipart?: string | false }, parentNode?: MimeNode | null }} MimeNode
 */

/**
 * Tells which parts are the words of a mail. The library would take every part of text that is not marked
 * `attachment` into them, also a named one marked `inline` (RFC 2183 §2.1), which is then nowhere to be found as the
 * file that it is. Of several parts that are shown without a name, the first is the body.
 */
function bodyParts() {
  let hasBody = false;
  return (/** @type {MimeNode} */ { contentDisposition, contentType, parentNode }) => {
    const disposition = contentDisposition.parsed.value;
    if (!/^text\/(?:plain|html)$/.test(contentType.parsed.value) || disposition === 'attachment')
      return false;
    const named = contentDisposition.parsed.params.filename ?? contentType.parsed.params.name;
    const further = hasBody && disposition === 'inline' && parentNode?.contentType.multipart === 'mixed';
    if (parentNode && (named || further)) return false;
    hasBody = true;
    return true;
  };
}

answering((/** @type {{ bytes: Uint8Array, nesting: number }} */ { bytes, nesting }) => {
  const parser = new PostalMime({
    forceRfc822Attachments: true,
    attachmentEncoding: 'arraybuffer',
    maxNestingDepth: nesting,
  });
  Object.defineProperty(parser, 'isInlineTextNode', { value: bodyParts() });
  return parser.parse(bytes);
});

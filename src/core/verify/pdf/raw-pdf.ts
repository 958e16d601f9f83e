import { latin1 } from '../../model/bytes.js';

/** Names that make a PDF act, run or reach out (ISO 32000-1 §12.6.4), wherever they stand outside packed objects. */
const ACTIVE = [
  ...['JavaScript', 'JS', 'Launch', 'SubmitForm', 'ImportData', 'GoToR', 'GoToE', 'URI'],
  ...['RichMedia', 'Rendition', 'EmbeddedFile', 'XFA', 'OpenAction', 'AA'],
];
const NAME = /\/((?:[A-Za-z0-9]|#[0-9A-Fa-f]{2}){2,24})(?![A-Za-z0-9#])/g;

/**
 * The active names in a stranger's PDF, found by a search of its bytes: nothing in it is parsed, unpacked or run, and
 * packed object streams are not searched. Empty for bytes that are no PDF.
 */
export function activeParts(bytes: Uint8Array): string[] {
  // Programs take a file for a PDF when the mark stands in its first kilobyte.
  if (!latin1(bytes, 0, 1029).includes('%PDF-')) return [];
  const found = new Set<string>();
  for (const [, name = ''] of latin1(bytes).matchAll(NAME)) {
    const plain = name.replace(/#([0-9A-Fa-f]{2})/g, (_, hex: string) =>
      String.fromCharCode(Number.parseInt(hex, 16)),
    );
    if (ACTIVE.includes(plain)) found.add(`/${plain}`);
  }
  return [...found].sort();
}

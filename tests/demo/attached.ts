import {
  decodePDFRawStream,
  PDFArray,
  PDFDict,
  PDFDocument,
  PDFHexString,
  PDFName,
  PDFRawStream,
  PDFString,
} from '#pdf-lib';

/**
 * What is attached to a PDF, by name, as its name tree says (ISO 32000-1 §7.11.4). Read by a general library,
 * not by the code that verifies.
 */
export async function attachedTo(bytes: Uint8Array): Promise<Map<string, Buffer>> {
  const pdf = await PDFDocument.load(bytes, { updateMetadata: false });
  const found = new Map<string, Buffer>();
  const visit = (node: PDFDict): void => {
    for (const kid of node.lookupMaybe(PDFName.of('Kids'), PDFArray)?.asArray() ?? [])
      visit(pdf.context.lookup(kid, PDFDict));
    const names = node.lookupMaybe(PDFName.of('Names'), PDFArray);
    for (let i = 0; names !== undefined && i < names.size(); i += 2) {
      const name = names.lookup(i);
      if (!(name instanceof PDFString || name instanceof PDFHexString))
        throw new Error('a name is no string');
      const file = names
        .lookup(i + 1, PDFDict)
        .lookup(PDFName.of('EF'), PDFDict)
        .lookup(PDFName.of('F'));
      if (!(file instanceof PDFRawStream)) throw new Error(`${name.decodeText()} has no bytes`);
      if (found.has(name.decodeText())) throw new Error(`${name.decodeText()} is there twice`);
      found.set(name.decodeText(), Buffer.from(decodePDFRawStream(file).decode()));
    }
  };
  visit(pdf.catalog.lookup(PDFName.of('Names'), PDFDict).lookup(PDFName.of('EmbeddedFiles'), PDFDict));
  return found;
}

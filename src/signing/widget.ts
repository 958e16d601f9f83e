import {
  PDFArray,
  PDFDict,
  type PDFDocument,
  PDFHexString,
  PDFName,
  PDFNumber,
  PDFRef,
  PDFString,
} from '#pdf-lib';

/** A page counted from 1, or the last, and a rectangle on it in points from the lower left corner. */
export interface VisiblePlace {
  page: number | 'last';
  rectangle: readonly [left: number, bottom: number, right: number, top: number];
  /** What stands there in one line, for those who hear the page. */
  alt?: string;
}

const ALT = 'Signature over the whole file';

/**
 * The field of the signature with its widget: invisible on the first page, or over the frame that the pages have for
 * it. In a tagged PDF a visible one is an element of the structure too, at its end.
 */
export function addWidget(document: PDFDocument, signature: PDFRef, visible?: VisiblePlace): PDFRef {
  const { context } = document;
  const page = document.getPage(pageIndex(document, visible));
  const [left, bottom, right, top] = visible?.rectangle ?? [0, 0, 0, 0];
  if (!(left <= right && bottom <= top)) throw new Error('the rectangle of the signature is inside out');
  const said = PDFHexString.fromText(visible?.alt ?? ALT);
  // The appearance is empty: the frame and its words are part of the page, which the signature covers.
  const appearance = context.register(
    context.stream('', {
      Type: 'XObject',
      Subtype: 'Form',
      BBox: [0, 0, right - left, top - bottom],
      Resources: {},
    }),
  );
  const widget = context.obj({
    Type: 'Annot',
    Subtype: 'Widget',
    FT: 'Sig',
    T: PDFString.of('Seal'),
    TU: said,
    Rect: [left, bottom, right, top],
    // Print and Locked: what ISO 19005-3 §6.3.2 wants of an annotation, and nothing may move it.
    F: 132,
    P: page.ref,
    V: signature,
    AP: { N: appearance },
  });
  const ref = context.register(widget);
  const annotations = page.node.lookupMaybe(PDFName.of('Annots'), PDFArray);
  if (annotations === undefined) page.node.set(PDFName.of('Annots'), context.obj([ref]));
  else annotations.push(ref);
  if (visible !== undefined) tag(document, { page: page.ref, widget, ref, said });
  return ref;
}

function pageIndex(document: PDFDocument, visible: VisiblePlace | undefined): number {
  if (visible === undefined) return 0;
  const pages = document.getPageCount();
  const index = (visible.page === 'last' ? pages : visible.page) - 1;
  if (!(index >= 0 && index < pages)) throw new Error(`there is no page ${visible.page} for the signature`);
  return index;
}

/**
 * Puts the widget into the structure tree as a form (ISO 32000-1 §14.7.4.3, §14.8.4.5; ISO 14289-1 §7.18.4): the last
 * thing that is read. Does nothing in a PDF that has no such tree.
 */
function tag(
  { context, catalog }: PDFDocument,
  { page, widget, ref, said }: { page: PDFRef; widget: PDFDict; ref: PDFRef; said: PDFHexString },
): void {
  const tree = catalog.lookupMaybe(PDFName.of('StructTreeRoot'), PDFDict);
  const numbers = tree?.lookupMaybe(PDFName.of('ParentTree'), PDFDict)?.lookup(PDFName.of('Nums'));
  const top = tree?.lookup(PDFName.of('K'));
  const documentRef = top instanceof PDFArray ? top.get(0) : tree?.get(PDFName.of('K'));
  if (tree === undefined || !(numbers instanceof PDFArray) || !(documentRef instanceof PDFRef)) return;
  const parent = context.lookup(documentRef, PDFDict);
  const kids = parent.lookup(PDFName.of('K'));
  if (!(kids instanceof PDFArray)) return;
  const key = nextKey(tree, numbers);
  const form = context.register(
    context.obj({
      Type: 'StructElem',
      S: 'Form',
      P: documentRef,
      Pg: page,
      Alt: said,
      K: [{ Type: 'OBJR', Obj: ref, Pg: page }],
    }),
  );
  kids.push(form);
  numbers.push(PDFNumber.of(key));
  numbers.push(form);
  tree.set(PDFName.of('ParentTreeNextKey'), PDFNumber.of(key + 1));
  widget.set(PDFName.of('StructParent'), PDFNumber.of(key));
  // ISO 14289-1 §7.18.3: a page with annotations is walked in the order of its structure.
  context.lookup(page, PDFDict).set(PDFName.of('Tabs'), PDFName.of('S'));
}

/** Keys of a number tree stand in order: the new one is larger than the last. */
function nextKey(tree: PDFDict, numbers: PDFArray): number {
  const said = tree.lookup(PDFName.of('ParentTreeNextKey'));
  const last = numbers.size() < 2 ? undefined : numbers.lookup(numbers.size() - 2);
  return Math.max(
    said instanceof PDFNumber ? said.asNumber() : 0,
    last instanceof PDFNumber ? last.asNumber() + 1 : 0,
  );
}

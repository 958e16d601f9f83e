import { join, relative, resolve } from 'node:path';
import ts from 'typescript';
import { describe, expect, it } from 'vitest';
import { PARTS } from './parts.js';

const ROOT = resolve(import.meta.dirname, '../..');
const DIST = join(ROOT, 'dist');

// The declarations as they were built, which others compile against and which are read in half the time.
const program = ts.createProgram(
  PARTS.map(({ file }) => join(DIST, `${file}.d.ts`)),
  { module: ts.ModuleKind.NodeNext, target: ts.ScriptTarget.ES2023, types: [], noEmit: true },
);
const checker = program.getTypeChecker();

/** What a name stands for in the end. */
const meant = (symbol: ts.Symbol): ts.Symbol =>
  symbol.flags & ts.SymbolFlags.Alias ? checker.getAliasedSymbol(symbol) : symbol;

function exportsOf(file: string): ts.Symbol[] {
  const source = program.getSourceFile(join(DIST, `${file}.d.ts`));
  const module = source === undefined ? undefined : checker.getSymbolAtLocation(source);
  if (module === undefined) throw new Error(`${file} exports nothing`);
  return checker.getExportsOfModule(module);
}

/** `type` for what is gone at run time. */
const shown = (symbol: ts.Symbol): string =>
  `${meant(symbol).flags & ts.SymbolFlags.Value ? '' : 'type '}${symbol.name}`;

/** Declarations of this house alone. */
const ownDeclarations = (symbol: ts.Symbol) =>
  (symbol.declarations ?? []).filter((one) => one.getSourceFile().fileName.startsWith(DIST));

/** The types that a declaration names. */
function namedIn(declaration: ts.Node): ts.Symbol[] {
  const found: ts.Symbol[] = [];
  const walk = (node: ts.Node): void => {
    const name = ts.isTypeReferenceNode(node)
      ? node.typeName
      : ts.isExpressionWithTypeArguments(node)
        ? node.expression
        : undefined;
    const symbol = name === undefined ? undefined : checker.getSymbolAtLocation(name);
    if (symbol !== undefined) found.push(meant(symbol));
    ts.forEachChild(node, walk);
  };
  walk(declaration);
  return found.filter((one) => (one.flags & ts.SymbolFlags.TypeParameter) === 0);
}

describe.each(PARTS)('$name', ({ file }) => {
  it('exports these names and no others', async () => {
    const list = exportsOf(file).map(shown).sort().join('\n');
    await expect(`${list}\n`).toMatchFileSnapshot(`public-names/${file}.txt`);
  });

  it('exports every type that is named by what it exports', () => {
    const exported = new Set(exportsOf(file).map(meant));
    const missing = [...exported].flatMap((symbol) =>
      ownDeclarations(symbol)
        .flatMap(namedIn)
        .filter((one) => !exported.has(one) && ownDeclarations(one).length > 0)
        .map((one) => {
          const at = relative(DIST, ownDeclarations(one)[0]?.getSourceFile().fileName ?? '');
          return `${one.name} of ${at}, named by ${symbol.name}`;
        }),
    );
    expect(missing).toEqual([]);
  });
});

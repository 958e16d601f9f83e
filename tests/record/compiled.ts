import { mkdir, readdir, readFile, symlink, writeFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import ts from 'typescript';
import { temporaryFolder } from './make.js';

const ROOT = join(import.meta.dirname, '../..');

/** Puts the record and the model in a folder as plain JavaScript, so that a process of its own can run them. */
export async function compiledRecord(): Promise<string> {
  const out = await temporaryFolder();
  await writeFile(join(out, 'package.json'), '{"type":"module"}');
  await symlink(join(ROOT, 'node_modules'), join(out, 'node_modules'));
  for (const part of ['model', 'record']) {
    for (const name of await readdir(join(ROOT, 'src', part), { recursive: true })) {
      if (!name.endsWith('.ts')) continue;
      await mkdir(dirname(join(out, part, name)), { recursive: true });
      const { outputText } = ts.transpileModule(await readFile(join(ROOT, 'src', part, name), 'utf8'), {
        compilerOptions: {
          target: ts.ScriptTarget.ES2023,
          module: ts.ModuleKind.ESNext,
          verbatimModuleSyntax: true,
        },
      });
      await writeFile(join(out, part, name.replace(/\.ts$/, '.js')), outputText);
    }
  }
  return out;
}

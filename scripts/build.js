// npm run build: makes dist from src and templates, whatever is in dist before. What is there afterwards is what the
// sources say: outputs without a source are removed, missing ones are made, and the program is put together anew
// whenever anything that is in it has changed.
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join, relative, sep } from 'node:path';
import { pathToFileURL } from 'node:url';

const ROOT = join(import.meta.dirname, '..');
const DIST = join(ROOT, 'dist');
/** What the shipped texts come to (`src/platform/node/prepared.ts`). */
const PREPARED = join(DIST, 'prepared');
/** The program in few files: 300 modules take a quarter of a second to find and load. */
const PROGRAM = join(DIST, 'program');
/** What PREPARED and PROGRAM were made from. */
const MADE_FROM = join(DIST, '.made-from');

compile();
const inputs = hashOf([
  ...filesIn(DIST, /\.js$/).filter((file) => !file.startsWith(PROGRAM)),
  ...filesIn(join(ROOT, 'templates'), /\.yaml$/),
  join(ROOT, 'package-lock.json'),
  import.meta.filename,
]);
if (!existsSync(MADE_FROM) || readFileSync(MADE_FROM, 'utf8') !== inputs) {
  for (const old of [MADE_FROM, PREPARED, PROGRAM]) rmSync(old, { recursive: true, force: true });
  const { prepareShipped } = await import(pathToFileURL(join(DIST, 'jobs/prepare-shipped.js')).href);
  await prepareShipped();
  await bundle();
  writeFileSync(MADE_FROM, inputs);
}

/** The compiler writes what changed since its last run, and neither misses nor removes a file. */
function compile() {
  const sources = new Set(
    filesIn(join(ROOT, 'src'), /(?<!\.d)\.[jt]s$/).map((file) => stem(ROOT, 'src', file)),
  );
  const outputs = filesIn(DIST, /\.js$/).filter((file) => !file.startsWith(PROGRAM));
  for (const file of outputs.filter((one) => !sources.delete(stem(ROOT, 'dist', one))))
    for (const ending of ['.js', '.js.map', '.d.ts']) rmSync(file.replace(/\.js$/, ending), { force: true });
  if (sources.size > 0) rmSync(join(DIST, '.tsbuildinfo'), { force: true });
  const compiler = createRequire(import.meta.url).resolve('typescript/bin/tsc');
  const { status } = spawnSync(process.execPath, [compiler, '-p', join(ROOT, 'tsconfig.build.json')], {
    stdio: 'inherit',
  });
  if (status !== 0) process.exit(status ?? 1);
}

/** Puts what the commands load into few files. Native and large libraries that few commands use stay outside. */
async function bundle() {
  const { rolldown } = await import('rolldown');
  const bundled = await rolldown({
    input: { dossier: join(DIST, 'cli/main.js') },
    platform: 'node',
    external: [
      /^(?:sharp|heic-decode|pdfjs-dist|@napi-rs\/|@myriaddreamin\/|#(?!platform\/)|asn1js|pkijs|node-forge|postal-mime|read-excel-file|yauzl|yazl)/,
    ],
    plugins: [{ name: 'own-address', transform: withOwnAddress }],
  });
  const { output } = await bundled.write({ dir: PROGRAM, format: 'esm' });
  const modules = output.flatMap((file) => (file.type === 'chunk' ? file.moduleIds : []));
  writeFileSync(join(PROGRAM, 'LICENSES.txt'), licensesOf(modules));
}

/**
 * The licenses of the packages whose code was put in, which ask to be handed on with it.
 * @param {readonly string[]} modules
 */
function licensesOf(modules) {
  const packages = new Set(
    modules.flatMap((id) => id.match(/^.*node_modules\/(?:@[^/]+\/)?[^/]+/)?.[0] ?? []),
  );
  const texts = [...packages].map((folder) => {
    const { name, version, license } = JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8'));
    const file = readdirSync(folder).find((one) => /^(?:licen[cs]e|copying)\b/i.test(one));
    const text = file === undefined ? '' : readFileSync(join(folder, file), 'utf8').trim();
    return `${name} ${version}, ${license}\n\n${text}`.trim();
  });
  return `${texts.sort().join(`\n\n${'-'.repeat(40)}\n\n`)}\n`;
}

/**
 * A module finds its templates, workers and forms from where it lies itself, not from the file that it was put into.
 * @param {string} code @param {string} id
 */
function withOwnAddress(code, id) {
  if (!id.startsWith(DIST) || !code.includes('import.meta.url')) return undefined;
  const own = JSON.stringify(relative(PROGRAM, id).split(sep).join('/'));
  return { code: code.replaceAll('import.meta.url', `new URL(${own}, import.meta.url).href`), map: null };
}

/** @param {string} root @param {string} folder @param {string} file */
function stem(root, folder, file) {
  return relative(join(root, folder), file).replace(/\.[jt]s$/, '');
}

/** @param {string} folder @param {RegExp} pattern */
function filesIn(folder, pattern) {
  if (!existsSync(folder)) return [];
  return readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((name) => pattern.test(name))
    .map((name) => join(folder, name))
    .sort();
}

/** @param {readonly string[]} files */
function hashOf(files) {
  const hash = createHash('sha256');
  for (const file of files)
    hash
      .update(`${relative(ROOT, file)}\0`)
      .update(readFileSync(file))
      .update('\0');
  return hash.digest('hex');
}

import { createHash } from 'node:crypto';
import { readFile, rm, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { Script } from 'node:vm';
import { parseAst } from 'vite';

/** Where the script puts what later modules take from it. */
const GLOBAL = 'countersignFirst';

/**
 * Makes a plain script of the module that the app begins with. Browsers compile a plain script whole
 * when a service worker keeps it, and hold on to what they compiled; a module is compiled anew, function
 * by function, at every opening, which on a slow phone takes a third of the time. Later modules go on
 * importing from the module's file, which hands on what the script has.
 *
 * @param {string} folder of the built app
 * @throws {Error} where the files are not as the bundler has laid them until now
 */
export async function makeFirstScript(folder) {
  const page = path.join(folder, 'index.html');
  const html = await read(page);
  const assets = path.join(folder, 'assets');
  const first = await firstOf(html, assets);
  const { name, script, module } = await split(assets, first);
  await writeFile(path.join(assets, name), script);
  await writeFile(path.join(assets, first), module);
  await moveMap(path.join(assets, `${first}.map`), path.join(assets, `${name}.map`));
  const withoutModules = html
    .replace(/\s*<script type="module"[^>]*><\/script>/gu, '')
    .replace(/\s*<link rel="modulepreload"[^>]*>/gu, '');
  const tag = `  <script defer src="/assets/${name}"></script>\n  `;
  await writeFile(page, withoutModules.replace('</head>', `${tag}</head>`));
}

/**
 * The name of the module that everything begins with: a page names it, or names one that does nothing
 * but import it.
 *
 * @param {string} html
 * @param {string} assets
 */
async function firstOf(html, assets) {
  for (const [, file = ''] of html.matchAll(
    /<script type="module"[^>]* src="\/assets\/([^"]+)"/gu,
  )) {
    if (file.startsWith('first-')) return file;
    const { imports, body } = partsOf(await read(path.join(assets, file)));
    const imported = imports.find((each) => each.file.startsWith('first-'));
    if (imported === undefined) continue;
    if (body.trim() !== '') throw new Error(`${file} does more than to import the first file.`);
    await rm(path.join(assets, file));
    await rm(path.join(assets, `${file}.map`), { force: true });
    return imported.file;
  }
  throw new Error('index.html leads to no first file.');
}

/**
 * A module as a script of the same lines, one below, and a module that hands on what it has.
 *
 * @param {string} assets
 * @param {string} first
 */
async function split(assets, first) {
  const module = partsOf(await read(path.join(assets, first)));
  const [runtime, ...others] = module.imports;
  if (runtime === undefined || others.length > 0 || module.exports.length === 0)
    throw new Error(`${first} does not import one file and export something.`);
  const imported = partsOf(await read(path.join(assets, runtime.file)));
  const localOf = new Map(imported.exports.map(({ local, exported }) => [exported, local]));
  const names = runtime.names.map(({ local }) => local).join(',');
  const values = runtime.names.map(({ imported: name }) => localOf.get(name)).join(',');
  const head =
    `(()=>{"use strict";const import_meta={url:document.currentScript.src};` +
    `const[${names}]=(()=>{${imported.body};return[${values}]})();`;
  const getters = module.exports.map(({ local, exported }) => `get ${exported}(){return ${local}}`);
  // What the module does at its end needs nothing of this, but a part it loads does.
  const script = `${head}\n${module.body};globalThis.${GLOBAL}={${getters.join(',')}};})();`;
  // Said here, not on somebody's phone: a script may not await at its top, as a module may.
  new Script(script, { filename: first });
  const name = `start-${createHash('sha256').update(script).digest('base64url').slice(0, 8)}.js`;
  const taken = module.exports.map(({ exported }, index) => `x${index}=first.${exported}`);
  const given = module.exports.map(({ exported }, index) => `x${index} as ${exported}`);
  return {
    name,
    script: `${script}\n//# sourceMappingURL=${name}.map\n`,
    module: `const first=globalThis.${GLOBAL},${taken.join(',')};export{${given.join(',')}};\n`,
  };
}

/**
 * The imports and exports of a built module, and its text with blanks in their place, so that nothing
 * else changes its column.
 *
 * @param {string} text
 */
function partsOf(text) {
  const imports = [];
  const exports = [];
  let body = text.replace(/^\/\/# sourceMappingURL=.*$/mu, '');
  for (const node of parseAst(text).body) {
    if (node.type === 'ImportDeclaration') {
      imports.push({
        file: path.basename(String(node.source.value)),
        names: node.specifiers.map((each) => ({
          local: each.local.name,
          imported: each.type === 'ImportSpecifier' ? nameOf(each.imported) : '',
        })),
      });
    } else if (node.type === 'ExportNamedDeclaration' && node.declaration === null) {
      for (const each of node.specifiers)
        exports.push({ local: nameOf(each.local), exported: nameOf(each.exported) });
    } else if (node.type.startsWith('Export')) {
      throw new Error(`A built module has an export of another kind: ${node.type}.`);
    } else continue;
    body = body.slice(0, node.start) + ' '.repeat(node.end - node.start) + body.slice(node.end);
  }
  // As long as what it stands for.
  return { imports, exports, body: body.replaceAll('import.meta', 'import_meta').trimEnd() };
}

/** @param {import('vite').ESTree.ModuleExportName} node */
function nameOf(node) {
  return node.type === 'Identifier' ? node.name : String(node.value);
}

/**
 * The source map of a file whose lines are one below.
 *
 * @param {string} from
 * @param {string} to
 */
async function moveMap(from, to) {
  const map = JSON.parse(await read(from));
  await writeFile(to, JSON.stringify({ ...map, mappings: `;${map.mappings}` }));
  await rm(from);
}

/** @param {string} file */
function read(file) {
  return readFile(file, 'utf8');
}

import { readdir, readFile, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { promisify } from 'node:util';
import { brotliCompress, constants, gzip } from 'node:zlib';

const [packBrotli, packGzip] = [promisify(brotliCompress), promisify(gzip)];
/** Less than this is sent in one packet anyway, bytes. */
const WORTH_IT = 1000;

/**
 * Lays a Brotli and a gzip copy beside each text file of the app, packed as tightly as time allows
 * once, for the server to send in its place.
 *
 * @param {string} folder
 */
export async function packFiles(folder) {
  const names = await readdir(folder, { recursive: true });
  const texts = names.filter((name) => /\.(?:js|css|svg)$/u.test(name));
  await Promise.all(
    texts.map(async (name) => {
      const file = path.join(folder, name);
      const bytes = await readFile(file);
      if (bytes.length < WORTH_IT) return;
      const params = { [constants.BROTLI_PARAM_SIZE_HINT]: bytes.length };
      await writeFile(`${file}.br`, await packBrotli(bytes, { params }));
      await writeFile(`${file}.gz`, await packGzip(bytes, { level: constants.Z_BEST_COMPRESSION }));
    }),
  );
}

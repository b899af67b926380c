import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';

/**
 * SHA-256 over the files of the core as they run here. Stored results are looked up by it, so that a
 * newer core never answers with numbers of an older one.
 */
export const ENGINE_HASH = hashFolder(path.join(import.meta.dirname, '..', 'core'));

function hashFolder(folder: string): string {
  const hash = createHash('sha256');
  const files = readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && /\.[jt]s$/.test(entry.name))
    .map((entry) => path.join(entry.parentPath, entry.name))
    .sort();
  for (const file of files) {
    const text = readFileSync(file, 'utf8');
    hash.update(`${path.relative(folder, file)}\0${text.length}\0${text}`);
  }
  return hash.digest('hex');
}

import { existsSync } from 'node:fs';
import path from 'node:path';

/**
 * The folder that holds package.json, and with it prisma/, scenarios/ and dist/web: the same folder
 * whether the code runs from server/ or, compiled, from dist/server/.
 */
export const PROJECT_ROOT = above(import.meta.dirname);

function above(folder: string): string {
  if (existsSync(path.join(folder, 'package.json'))) return folder;
  const parent = path.dirname(folder);
  if (parent === folder) throw new Error(`no package.json at or above ${import.meta.dirname}`);
  return above(parent);
}

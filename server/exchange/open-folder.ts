import { readFile, stat } from 'node:fs/promises';
import path from 'node:path';
import { FOLDER_FILES, type FolderFile } from './folder-files.js';

/** The files, or a sentence that says why nothing could be read at all. */
export type OpenedFolder =
  | { readonly ok: true; readonly files: readonly FolderFile[] }
  | { readonly ok: false; readonly reason: string };

/** Reads the files of a count folder from disk; what is in them is for `checkFolder` to say. */
export async function openFolder(folder: string): Promise<OpenedFolder> {
  try {
    if (!(await stat(folder)).isDirectory()) {
      return { ok: false, reason: `${folder} is a file. Give the count folder that it lies in.` };
    }
    const files: FolderFile[] = [];
    for (const name of FOLDER_FILES) {
      const content = await readIfThere(path.join(folder, name));
      if (content !== null) files.push({ name, content });
    }
    if (files.length > 0) return { ok: true, files };
    const wanted = 'count.json, places.geojson and tallies.csv';
    return { ok: false, reason: `${folder} is not a count folder: it has none of ${wanted}.` };
  } catch (error) {
    return { ok: false, reason: whyNot(folder, error) };
  }
}

function codeOf(error: unknown): string | null {
  return error instanceof Error && 'code' in error ? String(error.code) : null;
}

async function readIfThere(file: string): Promise<Uint8Array | null> {
  try {
    return await readFile(file);
  } catch (error) {
    if (codeOf(error) === 'ENOENT') return null;
    throw error;
  }
}

function whyNot(folder: string, error: unknown): string {
  switch (codeOf(error)) {
    case 'ENOENT':
      return `There is no folder ${folder}. Check the path.`;
    case 'EACCES':
    case 'EPERM':
      return `${folder} may not be read by this user. Check its permissions.`;
    default:
      return `${folder} could not be read: ${error instanceof Error ? error.message : String(error)}.`;
  }
}

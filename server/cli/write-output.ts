import { rename, rm, writeFile } from 'node:fs/promises';
import path from 'node:path';

/** Writes a file whole or not at all: into a file beside it, which then takes its place. */
export async function writeWhole(file: string, text: string): Promise<void> {
  const beside = path.join(path.dirname(file), `.${path.basename(file)}.${process.pid}.part`);
  try {
    await writeFile(beside, text, 'utf8');
    await rename(beside, file);
  } catch (error) {
    await rm(beside, { force: true });
    throw error;
  }
}

import { readFileSync } from 'node:fs';
import path from 'node:path';
import { filesBelow, root } from '../../server/toolchain/freshness.mjs';

const generated = /^server\/(api|database)\/generated\/|^web\/src\/graphql\/generated\//;

/** Files that people write and read, below the given places of the checkout, in order of their names. */
export function writtenFiles(...places: string[]): string[] {
  return places.flatMap((place) => filesBelow(place)).filter((file) => !generated.test(file));
}

/** @param file relative to the checkout */
export function textOf(file: string): string {
  return readFileSync(path.join(root, file), 'utf8');
}

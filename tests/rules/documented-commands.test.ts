import { existsSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import { root } from '../../server/toolchain/freshness.mjs';
import { textOf } from '../support/source-files.js';

const { scripts } = JSON.parse(textOf('package.json')) as { scripts: Record<string, string> };

/** The lines of all ```sh blocks, without comments and prompts. */
function shellLines(paper: string): string[] {
  const blocks = [...textOf(paper).matchAll(/^```(?:sh|bash|shell)\n([\s\S]*?)^```/gm)];
  return blocks
    .flatMap(([, block = '']) => block.split('\n'))
    .map((line) => line.replace(/(^|\s)#.*$/, '').trim())
    .filter((line) => line !== '');
}

/** The script of package.json that a line calls, if it calls npm. */
function scriptOf(line: string): string | undefined {
  const run = /\bnpm run (?:-s |--silent )?([\w:-]+)/.exec(line)?.[1];
  if (run !== undefined) return run;
  return /\bnpm (start|test)\b/.exec(line)?.[1];
}

describe.each(['README.md', 'DEVELOPERS.md'])('%s', (paper) => {
  test('shows commands', () => {
    expect(shellLines(paper).length).toBeGreaterThan(0);
  });

  test('names only scripts that there are', () => {
    const named = shellLines(paper).flatMap((line) => scriptOf(line) ?? []);
    expect(named.filter((script) => !(script in scripts))).toEqual([]);
  });

  test('names only files and folders that there are', () => {
    const places = shellLines(paper).flatMap((line) =>
      [...line.matchAll(/(?:^|\s)((?:server|web|tests|scenarios|prisma|docs)\/[\w./-]+)/g)].map(
        ([, place = '']) => place,
      ),
    );
    expect(places.filter((place) => !existsSync(path.join(root, place)))).toEqual([]);
  });

  test('links only to files that there are', () => {
    const links = [...textOf(paper).matchAll(/\]\((?!https?:|#|mailto:)([^)#\s]+)/g)].map(
      ([, place = '']) => place,
    );
    expect(links.filter((place) => !existsSync(path.join(root, place)))).toEqual([]);
  });
});

import { describe, expect, test } from 'vitest';
import { textOf, writtenFiles } from '../support/source-files.js';

const code = writtenFiles('server', 'web', 'tests', 'prisma/schema.prisma').filter((file) =>
  /\.(ts|tsx|mjs|cjs|js|css|graphql|prisma)$/.test(file),
);

const papers = [
  ...writtenFiles('README.md', 'DEVELOPERS.md', 'docs', 'scenarios'),
  ...writtenFiles('package.json', '.ci'),
];

describe('source files', () => {
  test('none is longer than 400 lines: a reader takes a file in at one sitting', () => {
    const long = code
      .map((file) => ({ file, lines: textOf(file).split('\n').length - 1 }))
      .filter(({ lines }) => lines > 400);
    expect(long).toEqual([]);
  });

  test('none holds a marker for work that is still to do; an issue is the place for that', () => {
    const markers = new RegExp(`\\b(${['TO' + 'DO', 'FIX' + 'ME', 'X' + 'XX'].join('|')})\\b`);
    const marked = [...code, ...papers]
      .filter((file) => !/\.(png|jpg|webp|xlsx|pdf)$/.test(file))
      .filter((file) => markers.test(textOf(file)));
    expect(marked).toEqual([]);
  });

  test('no folder is a drawer for anything, and no file only re-exports others', () => {
    const drawers = code.filter((file) => /\/(utils?|helpers?|common|misc)\//.test(file));
    const barrels = code.filter((file) => /\/index\.tsx?$/.test(file));
    expect([...drawers, ...barrels]).toEqual([]);
  });
});

test('the lock file names no registry, so that any may serve it', () => {
  expect(textOf('package-lock.json')).not.toContain('"resolved"');
});

import { Kind, parse, validate } from 'graphql';
import { describe, expect, test } from 'vitest';
import { graphqlContract } from '../support/graphql-contract.js';
import { textOf, writtenFiles } from '../support/source-files.js';

/** What the web app sends, as its modules put it together: the text, and the fragments added to it. */
const modules = import.meta.glob<Readonly<Record<string, string>>>(
  '../../web/src/**/*documents.ts',
  { eager: true },
);
const operations = Object.entries(modules).flatMap(([file, exported]) =>
  Object.entries(exported)
    .map(([name, text]) => ({ file, name, document: parse(text) }))
    .filter(({ document }) =>
      document.definitions.some(({ kind }) => kind === Kind.OPERATION_DEFINITION),
    ),
);

/** What follows `graphql(` in a file that holds documents. */
function writtenOperations(): readonly string[] {
  return writtenFiles('web/src')
    .filter((file) => /\.tsx?$/u.test(file))
    .flatMap((file) => textOf(file).match(/graphql\(`\s*(?:query|mutation) \w+/gu) ?? []);
}

describe('GraphQL documents of the web app', () => {
  test('every one is found here', () => {
    expect(operations.length).toBeGreaterThan(0);
    expect(operations).toHaveLength(writtenOperations().length);
  });

  test.each(operations)('$name in $file is valid as it is sent', ({ document }) => {
    const errors = validate(graphqlContract(), document);
    expect(errors.map(({ message }) => message)).toEqual([]);
  });
});

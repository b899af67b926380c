import { Kind, NoUnusedFragmentsRule, parse, specifiedRules, validate } from 'graphql';
import ts from 'typescript';
import { describe, expect, test } from 'vitest';
import { graphqlContract } from '../support/graphql-contract.js';
import { textOf, writtenFiles } from '../support/source-files.js';

interface WebDocument {
  readonly file: string;
  readonly name: string;
  readonly text: string;
}

/** The texts handed to graphql(…) in web/src. */
function webDocuments(): WebDocument[] {
  const documents: WebDocument[] = [];
  for (const file of writtenFiles('web/src').filter((name) => /\.tsx?$/.test(name))) {
    const source = ts.createSourceFile(file, textOf(file), ts.ScriptTarget.Latest, true);
    const visit = (node: ts.Node): void => {
      if (ts.isCallExpression(node) && node.expression.getText() === 'graphql') {
        const [text] = node.arguments;
        if (text && ts.isStringLiteralLike(text)) {
          const name = /\w+ (\w+)/.exec(text.text)?.[1] ?? '';
          documents.push({ file, name, text: text.text });
        }
      }
      ts.forEachChild(node, visit);
    };
    visit(source);
  }
  return documents;
}

const documents = webDocuments();

/** Fragments may be defined in one document and used in another, so each is checked with those of all. */
const fragments = documents
  .flatMap(({ text }) => parse(text).definitions)
  .filter((definition) => definition.kind === Kind.FRAGMENT_DEFINITION);

/** Every document is checked together with all fragments, so most are not used in it. */
const rules = specifiedRules.filter((rule) => rule !== NoUnusedFragmentsRule);

describe('GraphQL documents of the web app', () => {
  test('there are some', () => {
    expect(documents.length).toBeGreaterThan(0);
  });

  test.each(documents)('$name in $file', ({ text }) => {
    const operations = parse(text).definitions.filter(
      (definition) => definition.kind !== Kind.FRAGMENT_DEFINITION,
    );
    const document = { kind: Kind.DOCUMENT, definitions: [...operations, ...fragments] } as const;
    const errors = validate(graphqlContract(), document, rules);
    expect(errors.map(({ message }) => message)).toEqual([]);
  });
});

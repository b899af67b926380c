import { isSpecifiedScalarType } from 'graphql';
import ts from 'typescript';
import { describe, expect, test } from 'vitest';
import { graphqlContract } from '../support/graphql-contract.js';
import { textOf, writtenFiles } from '../support/source-files.js';

const contract = graphqlContract();

const operations = {
  Query: Object.values(contract.getQueryType()?.getFields() ?? {}),
  Mutation: Object.values(contract.getMutationType()?.getFields() ?? {}),
};

/** Names of the operations that a decorator (@Query() or @Mutation()) marks in the resolvers. */
function resolvedOperations(decorator: string): string[] {
  const names: string[] = [];
  for (const file of writtenFiles('server').filter((name) => name.endsWith('.resolver.ts'))) {
    const source = ts.createSourceFile(file, textOf(file), ts.ScriptTarget.Latest, true);
    const visit = (node: ts.Node): void => {
      if (ts.isMethodDeclaration(node)) {
        for (const { expression } of ts.getDecorators(node) ?? []) {
          if (!ts.isCallExpression(expression)) continue;
          if (expression.expression.getText() !== decorator) continue;
          const given = expression.arguments[0];
          names.push(given && ts.isStringLiteral(given) ? given.text : node.name.getText());
        }
      }
      ts.forEachChild(node, visit);
    };
    visit(source);
  }
  return names.sort();
}

describe('the GraphQL contract', () => {
  test.each(['Query', 'Mutation'] as const)(
    'every %s has one resolver, and there is no other',
    (kind) => {
      const declared = operations[kind].map(({ name }) => name).sort();
      expect(declared.length).toBeGreaterThan(0);
      expect(resolvedOperations(kind)).toEqual(declared);
    },
  );

  test('every operation says what it does', () => {
    const silent = Object.entries(operations).flatMap(([kind, fields]) =>
      fields.filter(({ description }) => !description).map(({ name }) => `${kind}.${name}`),
    );
    expect(silent).toEqual([]);
  });

  test('every type says what it is', () => {
    const silent = Object.values(contract.getTypeMap())
      .filter((type) => !type.name.startsWith('__') && !isSpecifiedScalarType(type))
      .filter((type) => type !== contract.getQueryType() && type !== contract.getMutationType())
      .filter(({ description }) => !description)
      .map(({ name }) => name);
    expect(silent).toEqual([]);
  });
});

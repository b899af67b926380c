import { buildSchema, type GraphQLSchema } from 'graphql';
import { textOf, writtenFiles } from './source-files.js';

/** The GraphQL contract as Nest joins it: all files of server/api/schema. */
export function graphqlContract(): GraphQLSchema {
  return buildSchema(writtenFiles('server/api/schema').map(textOf).join('\n'));
}

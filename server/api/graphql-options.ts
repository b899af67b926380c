import path from 'node:path';
import type { ApolloServerPlugin } from '@apollo/server';
import { ApolloDriver, type ApolloDriverConfig } from '@nestjs/apollo';
import { GraphQLError, GraphQLScalarType, type GraphQLFormattedError } from 'graphql';
import type { Response } from 'express';
import { inEnglish, saidIn, say } from '../core/model/saying.js';
import { ApiContext } from './context.js';
import { queryLimits } from './query-limits.js';
import type { RequestOfViewer } from './session.middleware.js';

/** An instant goes through as the text it is; what it says is checked where a fault can be told of. */
const instant = new GraphQLScalarType<string, string>({
  name: 'Instant',
  serialize: textOnly,
  parseValue: textOnly,
});

function textOnly(value: unknown): string {
  if (typeof value === 'string') return value;
  throw new GraphQLError('An Instant is text such as 2027-01-16T08:00:00-05:00.');
}

const BUG = say(
  'Something went wrong in the server, and nothing was changed. Try again; if it happens again, tell whoever runs the server.',
);

const isBug = ({ extensions }: GraphQLFormattedError): boolean =>
  extensions?.['code'] === 'INTERNAL_SERVER_ERROR';

/** Bugs are logged by Nest; what they say is not for the outside. */
function hideBugs(formatted: GraphQLFormattedError): GraphQLFormattedError {
  return isBug(formatted) ? { ...formatted, message: inEnglish(BUG) } : formatted;
}

/** Says of a hidden bug in the reader's language that there was one. */
const bugsInLanguage: ApolloServerPlugin<ApiContext> = {
  requestDidStart: () =>
    Promise.resolve({
      willSendResponse: ({ response: { body }, contextValue: { wording } }) => {
        if (body.kind === 'single' && body.singleResult.errors !== undefined) {
          body.singleResult.errors = body.singleResult.errors.map((error) =>
            isBug(error) ? { ...error, message: saidIn(BUG, wording) } : error,
          );
        }
        return Promise.resolve();
      },
    }),
};

export const graphqlOptions: ApolloDriverConfig = {
  driver: ApolloDriver,
  path: '/graphql',
  typePaths: [path.join(import.meta.dirname, 'schema', '*.graphql')],
  resolvers: { Instant: instant },
  resolverValidationOptions: { requireResolversForArgs: 'error' },
  context: ({ req, res }: { req: RequestOfViewer; res: Response }) => new ApiContext(req, res),
  // Fields are refused like whole operations.
  fieldResolverEnhancers: ['filters'],
  csrfPrevention: true,
  introspection: true,
  graphiql: false,
  validationRules: [queryLimits],
  parseOptions: { maxLexicalTokens: 20_000 },
  includeStacktraceInErrorResponses: false,
  formatError: hideBugs,
  plugins: [bugsInLanguage],
};

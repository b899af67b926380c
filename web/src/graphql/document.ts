import { gql } from 'urql';
import type { graphql as generated } from './generated/gql.js';

/**
 * A GraphQL document by its text, with the types that the generator found for that text. The text is
 * read here, so that each page brings its own documents alone: the generator's map holds those of all
 * pages, as trees many times as long as the texts.
 */
export const graphql = ((text: string) => gql(text)) as typeof generated;

interface Parts {
  readonly kind: unknown;
  readonly definitions: readonly unknown[];
}

/** A document together with the fragments that it names and that stand elsewhere. */
export function withFragments<Document extends Parts>(
  document: Document,
  ...fragments: readonly Parts[]
): Document {
  const definitions = [document, ...fragments].flatMap((one) => one.definitions);
  // Nothing else is taken over: the client notes a document's text and key on it.
  return { kind: document.kind, definitions } as unknown as Document;
}

import type { DocumentNode } from 'graphql';
import type { graphql as generated } from './generated/gql.js';

/**
 * A GraphQL document by its text, with the types that the generator found for that text. The client
 * reads a text when it is first asked for, so that no page waits for documents of others: the
 * generator's map holds those of all pages, as trees many times as long as the texts.
 */
export const graphql = ((text: string) => text) as unknown as typeof generated;

/** A document together with the fragments that it names and that stand elsewhere. */
export function withFragments<Document extends DocumentNode>(
  document: Document,
  ...fragments: readonly DocumentNode[]
): Document {
  const texts = [document, ...fragments] as unknown as readonly string[];
  return texts.join('\n') as unknown as Document;
}

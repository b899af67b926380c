import { createHash } from 'node:crypto';
import canonicalizeModule from 'canonicalize';

// The package is CommonJS: its function is the module itself.
const canonicalize = canonicalizeModule as unknown as (value: unknown) => string | undefined;

/**
 * The one text that a JSON value has by RFC 8785: keys sorted, no spaces, numbers as ECMAScript
 * writes them.
 *
 * @throws Error for a value that JSON cannot hold (undefined, NaN, infinity)
 */
export function canonicalJson(value: unknown): string {
  const text = canonicalize(value);
  if (text === undefined) throw new Error('only a JSON value has a canonical text');
  return text;
}

/** SHA-256 (FIPS 180-4) of a text's UTF-8 bytes, 64 hexadecimal digits. */
export function sha256(text: string): string {
  return createHash('sha256').update(text, 'utf8').digest('hex');
}

/** What a row's content is recognised by: SHA-256 of its canonical JSON. */
export function contentHash(content: unknown): string {
  return sha256(canonicalJson(content));
}

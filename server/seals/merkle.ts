import { createHash } from 'node:crypto';

const LEAF = Buffer.of(0x00);
const NODE = Buffer.of(0x01);

function hash(...parts: readonly Uint8Array[]): Buffer {
  const sum = createHash('sha256');
  for (const part of parts) sum.update(part);
  return sum.digest();
}

/** RFC 9162, 2.1.1: SHA-256 of a zero byte and the leaf. */
export function leafHash(leaf: Uint8Array): Buffer {
  return hash(LEAF, leaf);
}

/** RFC 9162, 2.1.1: SHA-256 of a one byte and both children. */
export function nodeHash(left: Uint8Array, right: Uint8Array): Buffer {
  return hash(NODE, left, right);
}

/**
 * The root of the Merkle tree over a list (RFC 9162, 2.1.1, SHA-256). The left subtree holds the
 * largest power of two that is smaller than the list; the root of an empty list is the hash of
 * nothing.
 */
export function merkleRoot(leaves: readonly Uint8Array[]): Buffer {
  const [first] = leaves;
  if (first === undefined) return hash();
  if (leaves.length === 1) return leafHash(first);
  let split = 1;
  while (split * 2 < leaves.length) split *= 2;
  return nodeHash(merkleRoot(leaves.slice(0, split)), merkleRoot(leaves.slice(split)));
}

import { describe, expect, it } from 'vitest';
import { canonicalJson, sha256 } from '../../server/seals/canonical.js';
import { leafHash, merkleRoot, nodeHash } from '../../server/seals/merkle.js';
// Published vectors; each names its source (FIPS 180-4, RFC 8785, Certificate Transparency) and
// whether the publication was read or the value is from memory and recomputed.
import vectors from './hash-vectors.json' with { type: 'json' };

const hex = (bytes: Uint8Array): string => Buffer.from(bytes).toString('hex');
const utf8 = (text: string): Buffer => Buffer.from(text, 'utf8');

describe('SHA-256 (FIPS 180-4 example messages)', () => {
  for (const id of ['sha256-fips-0', 'sha256-fips-1', 'sha256-fips-2'] as const) {
    it(id, () => {
      const { input, expected } = vectors[id];
      expect(sha256(input.message_utf8)).toBe(expected.sha256_hex);
    });
  }
});

describe('canonical JSON (RFC 8785 reference data)', () => {
  for (const id of [
    'jcs-rfc8785-arrays',
    'jcs-rfc8785-french',
    'jcs-rfc8785-structures',
  ] as const) {
    it(id, () => {
      const { input, expected } = vectors[id];
      const text = canonicalJson(JSON.parse(input.json_text));
      expect(text).toBe(expected.canonical_text);
      expect(hex(utf8(text))).toBe(expected.canonical_hex);
      expect(sha256(text)).toBe(expected.sha256_hex);
    });
  }

  it('writes numbers as RFC 8785, appendix B, lists them', () => {
    const { input, expected } = vectors['jcs-numbers-visible'];
    const texts = input.ieee754_big_endian_hex.map((bits) =>
      canonicalJson(Buffer.from(bits, 'hex').readDoubleBE()),
    );
    expect(texts).toEqual(expected.json_text);
  });

  it('refuses what JSON cannot hold', () => {
    for (const value of [NaN, Infinity, -Infinity, undefined]) {
      expect(() => canonicalJson(value)).toThrow();
    }
  });
});

describe('Merkle root (RFC 9162, 2.1.1; Certificate Transparency vectors)', () => {
  const { input, expected } = vectors['merkle-rfc6962-8-leaves'];
  const leaves = input.leaves_hex.map((leaf) => Buffer.from(leaf, 'hex'));

  for (const [size, root] of Object.entries(expected.roots_by_size)) {
    it(`of the first ${size} leaves`, () => {
      expect(hex(merkleRoot(leaves.slice(0, Number(size))))).toBe(root);
    });
  }

  it('hashes each leaf as published', () => {
    expect(leaves.map((leaf) => hex(leafHash(leaf)))).toEqual(expected.leaf_hashes);
  });

  it('hashes leaves and nodes apart from one another', () => {
    const primitives = vectors['merkle-rfc6962-hash-primitives'];
    const { leaf_utf8: leaf, node_left_utf8: left, node_right_utf8: right } = primitives.input;
    expect(hex(merkleRoot([]))).toBe(primitives.expected.empty_root);
    expect(hex(leafHash(utf8('')))).toBe(primitives.expected.empty_leaf);
    expect(hex(leafHash(utf8(leaf)))).toBe(primitives.expected.leaf);
    expect(hex(nodeHash(utf8(left), utf8(right)))).toBe(
      primitives.expected.node_hash_of_raw_children,
    );
  });
});

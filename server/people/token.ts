import { randomBytes } from 'node:crypto';
import { sha256 } from '../seals/canonical.js';

/** 256 random bits for a cookie or a link. Only its hash is stored. */
export function newToken(): string {
  return randomBytes(32).toString('base64url');
}

/** A random 256-bit token needs no salt: nothing can be guessed from its hash. */
export function hashToken(token: string): string {
  return sha256(token);
}

import { randomBytes, scrypt, timingSafeEqual } from 'node:crypto';
import { Refusal } from '../core/refusal.js';
import { say } from '../core/model/saying.js';

/** scrypt cost: about 50 ms and 32 MB a try (RFC 7914's parameters; OWASP's minimum of 2023 is half). */
const COST = { N: 2 ** 15, r: 8, p: 1, maxmem: 64 * 1024 * 1024 };
const KEY_BYTES = 32;
const SHORTEST = 10;
const LONGEST = 200;

/** The same password typed on two keyboards has the same bytes. */
function derive(password: string, salt: Buffer, cost: typeof COST): Promise<Buffer> {
  return new Promise((resolve, reject) => {
    scrypt(password.normalize('NFKC'), salt, KEY_BYTES, cost, (error, key) => {
      if (error) reject(error);
      else resolve(key);
    });
  });
}

/** @throws Refusal BAD_INPUT if it is too short or too long */
export function checkNewPassword(password: string): void {
  if (password.length >= SHORTEST && password.length <= LONGEST) return;
  throw Refusal.badInput([
    {
      code: 'password-length',
      file: 'password',
      row: null,
      column: null,
      value: null,
      problem: say('the password has {number} characters', { number: password.length }),
      expected: say('{shortest} to {longest}; a few unrelated words do well', {
        shortest: SHORTEST,
        longest: LONGEST,
      }),
      nearest: null,
    },
  ]);
}

/** `scrypt$N$r$p$salt$key`, all that is needed to check it later. */
export async function hashPassword(password: string): Promise<string> {
  const salt = randomBytes(16);
  const key = await derive(password, salt, COST);
  return ['scrypt', COST.N, COST.r, COST.p, salt.toString('hex'), key.toString('hex')].join('$');
}

/** Takes the same time whether it fits or not. A missing hash never fits, and takes as long. */
export async function passwordFits(password: string, stored: string | null): Promise<boolean> {
  const [, N, r, p, salt = '', key = ''] = (stored ?? NEVER_FITS).split('$');
  const cost = { ...COST, N: Number(N), r: Number(r), p: Number(p) };
  const derived = await derive(password, Buffer.from(salt, 'hex'), cost);
  const fits = timingSafeEqual(derived, Buffer.from(key, 'hex'));
  return fits && stored !== null;
}

const NEVER_FITS = `scrypt$${COST.N}$${COST.r}$${COST.p}$${'0'.repeat(32)}$${'0'.repeat(64)}`;

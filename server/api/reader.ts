import type { Request, Response } from 'express';
import { ENGLISH, type Wording } from '../core/model/saying.js';
import { FRENCH } from '../core/words/french.js';

const WORDINGS = { en: ENGLISH, fr: FRENCH } as const;

/**
 * The language of whoever reads the answer: the one that the request would rather have (RFC 9110,
 * 12.5.4), English where it asks for neither. The answer tells which it is, and that others got another.
 */
export function wordingFor(request: Request, response: Response): Wording {
  const accepted = request.acceptsLanguages(['en', 'fr']);
  const language = accepted === 'fr' ? 'fr' : 'en';
  response.vary('Accept-Language').set('Content-Language', language);
  return WORDINGS[language];
}

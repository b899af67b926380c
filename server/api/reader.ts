import type { Request, Response } from 'express';
import { ENGLISH, type Wording } from '../core/model/saying.js';
import { FRENCH } from '../core/words/french.js';

export const WORDINGS = { en: ENGLISH, fr: FRENCH } as const;

/** The language that a request would rather have (RFC 9110, 12.5.4), English where it asks for neither. */
export function languageOf(request: Request): keyof typeof WORDINGS {
  return request.acceptsLanguages(['en', 'fr']) === 'fr' ? 'fr' : 'en';
}

/** The words of whoever reads the answer, which tells their language, and that others got another. */
export function wordingFor(request: Request, response: Response): Wording {
  const language = languageOf(request);
  response.vary('Accept-Language').set('Content-Language', language);
  return WORDINGS[language];
}

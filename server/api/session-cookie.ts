import type { CookieOptions, Request, Response } from 'express';

const NAME = 'countersign_session';

/** The token of the request's session cookie, or null. */
export function sessionToken(request: Request): string | null {
  const cookies = (request.headers.cookie ?? '').split(';').map((cookie) => cookie.trim());
  const found = cookies.find((cookie) => cookie.startsWith(`${NAME}=`));
  return found === undefined ? null : found.slice(NAME.length + 1);
}

export function setSessionCookie(
  request: Request,
  response: Response,
  token: string,
  expires: Date,
): void {
  response.cookie(NAME, token, { ...options(request), expires });
}

export function clearSessionCookie(request: Request, response: Response): void {
  response.clearCookie(NAME, options(request));
}

/** Scripts cannot read it, and other sites' forms do not send it. */
function options(request: Request): CookieOptions {
  return { httpOnly: true, sameSite: 'lax', path: '/', secure: request.secure };
}

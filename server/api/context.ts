import type { Response } from 'express';
import type { Wording } from '../core/model/saying.js';
import type { Viewer } from '../people/viewer.js';
import type { OpenedSession } from '../people/people.service.js';
import { wordingFor } from './reader.js';
import type { RequestOfViewer } from './session.middleware.js';
import { clearSessionCookie, sessionToken, setSessionCookie } from './session-cookie.js';

/** What a resolver knows of the request: who asks, and how to begin or end their session. */
export class ApiContext {
  /** The language of whoever asks. */
  readonly wording: Wording;

  constructor(
    private readonly request: RequestOfViewer,
    private readonly response: Response,
  ) {
    this.wording = wordingFor(request, response);
  }

  get viewer(): Viewer | null {
    return this.request.viewer ?? null;
  }

  get token(): string | null {
    return sessionToken(this.request);
  }

  /** Where the request came from, for the throttle. */
  get address(): string {
    return this.request.ip ?? 'unknown';
  }

  /** Hands the session's token to the browser; @returns whose session it is. */
  begin({ person, token, expiresAt }: OpenedSession): OpenedSession['person'] {
    setSessionCookie(this.request, this.response, token, expiresAt);
    return person;
  }

  end(): void {
    clearSessionCookie(this.request, this.response);
  }
}

import { Injectable, type NestMiddleware } from '@nestjs/common';
import type { NextFunction, Request, Response } from 'express';
import { PeopleService } from '../people/people.service.js';
import type { Viewer } from '../people/viewer.js';
import { languageOf, WORDINGS } from './reader.js';
import { sessionToken } from './session-cookie.js';

/** A request whose session has been looked up. */
export interface RequestOfViewer extends Request {
  viewer?: Viewer | null;
}

/** Finds out who asks, once a request. */
@Injectable()
export class SessionMiddleware implements NestMiddleware {
  constructor(private readonly people: PeopleService) {}

  async use(request: RequestOfViewer, _response: Response, next: NextFunction): Promise<void> {
    const viewer = await this.people.viewerOf(sessionToken(request));
    request.viewer = viewer && { ...viewer, wording: WORDINGS[languageOf(request)] };
    next();
  }
}

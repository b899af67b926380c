import { existsSync, readdirSync } from 'node:fs';
import path from 'node:path';
import {
  static as serveStatic,
  type Express,
  type NextFunction,
  type Request,
  type RequestHandler,
  type Response,
} from 'express';
import { PROJECT_ROOT } from '../project-root.js';

/** Where the build puts the web app. */
export const WEB_FOLDER = path.join(PROJECT_ROOT, 'dist', 'web');

/**
 * Serves the built web app. Every path that is no file is a page of the app: it gets index.html,
 * which finds the page itself.
 *
 * @param folder of the built app
 */
export function serveWebFiles(app: Express, folder: string): void {
  app.use(preferPacked(folder));
  app.use(
    serveStatic(folder, {
      index: false,
      setHeaders: (response: Response, file: string) => {
        response.set('Cache-Control', cacheRule(path.relative(folder, file)));
      },
    }),
  );
  app.use((request: Request, response: Response, next: NextFunction) => {
    const isPage =
      request.method === 'GET' && request.accepts('html') && !NO_PAGES.test(request.path);
    if (!isPage) {
      next();
      return;
    }
    response.set('Cache-Control', 'no-cache');
    response.sendFile('index.html', { root: folder }, (error?: Error) => {
      if (error) next(error);
    });
  });
}

/** Sends the packed copy of a file, where the build laid one beside it and the browser can unpack it. */
function preferPacked(folder: string): RequestHandler {
  const files = new Set(
    existsSync(folder) ? readdirSync(folder, { recursive: true, encoding: 'utf8' }) : [],
  );
  return (request, response, next) => {
    const file = path.normalize(request.path).slice(1);
    const packed = packings.find(
      ({ name, ending }) => files.has(file + ending) && request.acceptsEncodings(name),
    );
    if (files.has(`${file}.gz`)) response.vary('Accept-Encoding');
    if (packed !== undefined) {
      response.type(path.extname(file)).set('Content-Encoding', packed.name);
      request.url = request.path + packed.ending;
    }
    next();
  };
}

/** The smaller one first. */
const packings = [
  { name: 'br', ending: '.br' },
  { name: 'gzip', ending: '.gz' },
] as const;

/** The build puts a hash of the content into the name of what lies in assets/. */
function cacheRule(file: string): string {
  const isHashed = file.startsWith(`assets${path.sep}`);
  return isHashed ? 'public, max-age=31536000, immutable' : 'no-cache';
}

/** What is answered by the server itself, or is a file that is not there. */
const NO_PAGES = /^\/(graphql|health|field-sheets|assets)(\/|$)/u;

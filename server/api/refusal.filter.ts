import { Catch, type ArgumentsHost, type ExceptionFilter } from '@nestjs/common';
import type { Request, Response } from 'express';
import { GraphQLError } from 'graphql';
import { saidFault } from '../core/model/fault.js';
import { saidIn } from '../core/model/saying.js';
import { Refusal, type RefusalCode } from '../core/refusal.js';
import type { ApiContext } from './context.js';
import { wordingFor } from './reader.js';

/**
 * Turns a refusal into a GraphQL error in the reader's language: the message for the person,
 * `extensions.code` for the program, and every fault of bad input in `extensions.faults`. It is
 * returned, not thrown: Nest logs what is thrown as a bug. A plain page gets the message with a status
 * instead.
 */
@Catch(Refusal)
export class RefusalFilter implements ExceptionFilter<Refusal> {
  catch({ code, saying, faults }: Refusal, host: ArgumentsHost): GraphQLError | undefined {
    if (host.getType() === 'http') {
      const http = host.switchToHttp();
      const response = http.getResponse<Response>();
      const wording = wordingFor(http.getRequest<Request>(), response);
      response
        .status(STATUS[code] ?? 400)
        .type('text/plain')
        .send(saidIn(saying, wording));
      return undefined;
    }
    const { wording } = host.getArgByIndex<ApiContext>(2);
    return new GraphQLError(saidIn(saying, wording), {
      extensions: { code, faults: faults.map((fault) => saidFault(fault, wording)) },
    });
  }
}

/** What a browser or a proxy has to know of a refusal; every other one is a bad request. */
const STATUS: Readonly<Partial<Record<RefusalCode, number>>> = {
  NOT_SIGNED_IN: 401,
  NOT_ALLOWED: 403,
  NOT_FOUND: 404,
  NOT_NOW: 409,
  TOO_MANY_TRIES: 429,
};

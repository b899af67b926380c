import { Catch, type ArgumentsHost, type ExceptionFilter } from '@nestjs/common';
import type { Response } from 'express';
import { GraphQLError } from 'graphql';
import { Refusal, type RefusalCode } from '../core/refusal.js';

/**
 * Turns a refusal into a GraphQL error: the message for the person, `extensions.code` for the
 * program, and every fault of bad input in `extensions.faults`. It is returned, not thrown: Nest logs
 * what is thrown as a bug. A plain page gets the message with a status instead.
 */
@Catch(Refusal)
export class RefusalFilter implements ExceptionFilter<Refusal> {
  catch({ code, message, faults }: Refusal, host: ArgumentsHost): GraphQLError | undefined {
    if (host.getType() === 'http') {
      const response = host.switchToHttp().getResponse<Response>();
      response
        .status(STATUS[code] ?? 400)
        .type('text/plain')
        .send(message);
      return undefined;
    }
    return new GraphQLError(message, { extensions: { code, faults } });
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

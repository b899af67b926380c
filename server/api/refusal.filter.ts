import { Catch, type ExceptionFilter } from '@nestjs/common';
import { GraphQLError } from 'graphql';
import { Refusal } from '../core/refusal.js';

/**
 * Turns a refusal into a GraphQL error: the message for the person, `extensions.code` for the
 * program, and every fault of bad input in `extensions.faults`. It is returned, not thrown: Nest logs
 * what is thrown as a bug.
 */
@Catch(Refusal)
export class RefusalFilter implements ExceptionFilter<Refusal> {
  catch({ code, message, faults }: Refusal): GraphQLError {
    return new GraphQLError(message, { extensions: { code, faults } });
  }
}

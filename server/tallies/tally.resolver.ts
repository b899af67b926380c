import { Args, Context, Mutation, Query, Resolver } from '@nestjs/graphql';
import type * as Api from '../api/generated/schema.js';
import type { ApiContext } from '../api/context.js';
import { TallyService } from './tally.service.js';

@Resolver('Tally')
export class TallyResolver {
  constructor(private readonly tallies: TallyService) {}

  @Query('tally')
  tally(
    @Context() { viewer }: ApiContext,
    @Args() { id, countId }: Api.QueryTallyArgs,
  ): Promise<Api.Tally> {
    return this.tallies.tally(viewer, id, countId ?? null);
  }

  @Mutation('submitTally')
  submitTally(
    @Context() { viewer }: ApiContext,
    @Args() { input }: Api.MutationSubmitTallyArgs,
  ): Promise<Api.Tally> {
    return this.tallies.submitTally(viewer, input);
  }
}

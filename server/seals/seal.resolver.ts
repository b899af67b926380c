import { Args, Context, Mutation, Parent, ResolveField, Resolver } from '@nestjs/graphql';
import type * as Api from '../api/generated/schema.js';
import type { ApiContext } from '../api/context.js';
import type { CountView } from '../plans/count.view.js';
import type { CompiledView } from './compiled.view.js';
import { SealService } from './seal.service.js';

@Resolver('CompiledCount')
export class SealResolver {
  constructor(private readonly seals: SealService) {}

  @Mutation('signOff')
  signOff(
    @Context() { viewer }: ApiContext,
    @Args() { countId, as, inputHash }: Api.MutationSignOffArgs,
  ): Promise<CountView> {
    return this.seals.signOff(viewer, countId, as, inputHash);
  }

  @Mutation('seal')
  seal(
    @Context() { viewer }: ApiContext,
    @Args() { countId }: Api.MutationSealArgs,
  ): Promise<Api.Seal> {
    return this.seals.seal(viewer, countId);
  }

  @ResolveField('line')
  line(
    @Parent() compiled: CompiledView,
    @Args() { taxon }: Api.CompiledCountLineArgs,
  ): Api.CompiledLine | null {
    return this.seals.line(compiled, taxon);
  }

  @ResolveField('ledger')
  ledger(
    @Parent() compiled: CompiledView,
    @Args() { taxon }: Api.CompiledCountLedgerArgs,
  ): readonly Api.Posting[] {
    return this.seals.ledger(compiled, taxon ?? null);
  }
}

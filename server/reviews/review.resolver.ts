import { Args, Context, Mutation, Parent, ResolveField, Resolver } from '@nestjs/graphql';
import type * as Api from '../api/generated/schema.js';
import type { ApiContext } from '../api/context.js';
import { QueryService } from './query.service.js';
import { ReviewService } from './review.service.js';
import type { ReviewView } from './review.view.js';
import { RulingService } from './ruling.service.js';

@Resolver('Review')
export class ReviewResolver {
  constructor(
    private readonly reviews: ReviewService,
    private readonly rulings: RulingService,
    private readonly queries: QueryService,
  ) {}

  @Mutation('reconcile')
  reconcile(
    @Context() { viewer }: ApiContext,
    @Args() { countId }: Api.MutationReconcileArgs,
  ): Promise<ReviewView> {
    return this.reviews.reconcile(viewer, countId);
  }

  @Mutation('giveRuling')
  giveRuling(
    @Context() { viewer }: ApiContext,
    @Args() { input }: Api.MutationGiveRulingArgs,
  ): Promise<Api.Ruling> {
    return this.rulings.giveRuling(viewer, input);
  }

  @Mutation('secondRuling')
  secondRuling(
    @Context() { viewer }: ApiContext,
    @Args() { rulingId }: Api.MutationSecondRulingArgs,
  ): Promise<Api.Ruling> {
    return this.rulings.secondRuling(viewer, rulingId);
  }

  @Mutation('withdrawRuling')
  withdrawRuling(
    @Context() { viewer }: ApiContext,
    @Args() { rulingId, reason }: Api.MutationWithdrawRulingArgs,
  ): Promise<Api.Ruling> {
    return this.rulings.withdrawRuling(viewer, rulingId, reason);
  }

  @Mutation('askQuery')
  askQuery(
    @Context() { viewer }: ApiContext,
    @Args() { input }: Api.MutationAskQueryArgs,
  ): Promise<Api.ObserverQuery> {
    return this.queries.askQuery(viewer, input);
  }

  @Mutation('answerQuery')
  answerQuery(
    @Context() { viewer }: ApiContext,
    @Args() { queryId, answer }: Api.MutationAnswerQueryArgs,
  ): Promise<Api.ObserverQuery> {
    return this.queries.answerQuery(viewer, queryId, answer);
  }

  @ResolveField('disagreements')
  disagreements(
    @Parent() review: ReviewView,
    @Args() args: Api.ReviewDisagreementsArgs,
  ): readonly Api.Disagreement[] {
    return this.reviews.disagreements(review, args);
  }

  @ResolveField('disagreement')
  disagreement(
    @Parent() review: ReviewView,
    @Args() { id }: Api.ReviewDisagreementArgs,
  ): Api.Disagreement {
    return this.reviews.disagreement(review, id);
  }
}

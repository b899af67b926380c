import { Args, Context, Mutation, Parent, Query, ResolveField, Resolver } from '@nestjs/graphql';
import type * as Api from '../api/generated/schema.js';
import type { ApiContext } from '../api/context.js';
import { QueryService } from '../reviews/query.service.js';
import type { ReviewView } from '../reviews/review.view.js';
import { ReviewService } from '../reviews/review.service.js';
import { AuditService } from '../seals/audit.service.js';
import type { CompiledView } from '../seals/compiled.view.js';
import { SealService } from '../seals/seal.service.js';
import { TallyService } from '../tallies/tally.service.js';
import { AssignmentService } from './assignment.service.js';
import type { CountView } from './count.view.js';
import { PlanService } from './plan.service.js';

@Resolver('Count')
export class CountResolver {
  constructor(
    private readonly plans: PlanService,
    private readonly assignmentService: AssignmentService,
    private readonly tallies: TallyService,
    private readonly queryService: QueryService,
    private readonly reviews: ReviewService,
    private readonly seals: SealService,
    private readonly audit: AuditService,
  ) {}

  @Query('counts')
  counts(@Context() { viewer }: ApiContext): Promise<CountView[]> {
    return this.plans.counts(viewer);
  }

  @Query('count')
  count(@Context() { viewer }: ApiContext, @Args() { id }: Api.QueryCountArgs): Promise<CountView> {
    return this.plans.count(viewer, id);
  }

  @Mutation('planCount')
  planCount(
    @Context() { viewer }: ApiContext,
    @Args() { input }: Api.MutationPlanCountArgs,
  ): Promise<CountView> {
    return this.plans.planCount(viewer, input);
  }

  @Mutation('importCount')
  importCount(
    @Context() { viewer }: ApiContext,
    @Args() { files }: Api.MutationImportCountArgs,
  ): Promise<CountView> {
    return this.plans.importCount(viewer, files);
  }

  @Mutation('assign')
  assign(
    @Context() { viewer }: ApiContext,
    @Args() { input }: Api.MutationAssignArgs,
  ): Promise<Api.Assignment> {
    return this.assignmentService.assign(viewer, input);
  }

  @Mutation('unassign')
  unassign(
    @Context() { viewer }: ApiContext,
    @Args() { assignmentId }: Api.MutationUnassignArgs,
  ): Promise<boolean> {
    return this.assignmentService.unassign(viewer, assignmentId);
  }

  @Mutation('closeWindow')
  closeWindow(
    @Context() { viewer }: ApiContext,
    @Args() { countId, windowId }: Api.MutationCloseWindowArgs,
  ): Promise<CountView> {
    return this.plans.closeWindow(viewer, countId, windowId);
  }

  @ResolveField('assignments')
  assignments(@Parent() { access }: CountView): Promise<Api.Assignment[]> {
    return this.plans.assignments(access);
  }

  @ResolveField('coverage')
  coverage(@Parent() { access }: CountView): Api.Coverage[] {
    return this.plans.coverage(access);
  }

  @ResolveField('myTallies')
  myTallies(@Parent() { access }: CountView): Promise<Api.Tally[]> {
    return this.tallies.ownTallies(access);
  }

  @ResolveField('queries')
  queries(@Parent() { access }: CountView): Promise<Api.ObserverQuery[]> {
    return this.queryService.queriesFor(access);
  }

  @ResolveField('review')
  review(@Parent() { access }: CountView): Promise<ReviewView> {
    return this.reviews.review(access);
  }

  @ResolveField('ownAgreement')
  ownAgreement(@Parent() { access }: CountView): Promise<Api.OwnAgreement> {
    return this.reviews.ownAgreement(access);
  }

  @ResolveField('compiled')
  compiled(@Parent() { access }: CountView): Promise<CompiledView> {
    return this.seals.compiled(access);
  }

  @ResolveField('auditTrail')
  auditTrail(
    @Parent() { access }: CountView,
    @Args() { first, before }: Api.CountAuditTrailArgs,
  ): Promise<Api.AuditTrail> {
    return this.audit.trail(access, first ?? 100, before ?? null);
  }
}

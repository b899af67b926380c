import { Args, Context, Mutation, Query, Resolver } from '@nestjs/graphql';
import type * as Api from '../api/generated/schema.js';
import type { ApiContext } from '../api/context.js';
import { PlanService } from '../plans/plan.service.js';
import { PeopleService } from './people.service.js';

@Resolver('Person')
export class PersonResolver {
  constructor(
    private readonly people: PeopleService,
    private readonly plans: PlanService,
  ) {}

  @Query('me')
  me(@Context() { viewer }: ApiContext): Api.Person | null {
    return viewer && { id: viewer.personId, name: viewer.name };
  }

  @Query('mayPlan')
  mayPlan(@Context() { viewer }: ApiContext): Promise<boolean> {
    return this.plans.mayPlan(viewer);
  }

  @Mutation('signIn')
  async signIn(
    @Context() context: ApiContext,
    @Args() { name, password }: Api.MutationSignInArgs,
  ): Promise<Api.Person> {
    return context.begin(await this.people.signIn(name, password, context.address));
  }

  @Mutation('acceptInvite')
  async acceptInvite(
    @Context() context: ApiContext,
    @Args() { token }: Api.MutationAcceptInviteArgs,
  ): Promise<Api.Person> {
    return context.begin(await this.people.acceptInvite(token, context.viewer));
  }

  @Mutation('signOut')
  signOut(@Context() context: ApiContext): Promise<boolean> {
    context.end();
    return this.people.signOut(context.token);
  }

  @Mutation('setPassword')
  setPassword(
    @Context() { viewer }: ApiContext,
    @Args() args: Api.MutationSetPasswordArgs,
  ): Promise<Api.Person> {
    return this.people.setPassword(viewer, args.current ?? null, args.new);
  }

  @Mutation('invite')
  invite(
    @Context() { viewer }: ApiContext,
    @Args() { countId, personId }: Api.MutationInviteArgs,
  ): Promise<Api.Invite> {
    return this.people.invite(viewer, countId, personId);
  }
}

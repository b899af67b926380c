import { Module, type MiddlewareConsumer, type NestModule } from '@nestjs/common';
import { APP_FILTER } from '@nestjs/core';
import { GraphQLModule } from '@nestjs/graphql';
import { graphqlOptions } from './api/graphql-options.js';
import { HealthController } from './api/health.controller.js';
import { RefusalFilter } from './api/refusal.filter.js';
import { SessionMiddleware } from './api/session.middleware.js';
import { Database } from './database/database.js';
import { PeopleService } from './people/people.service.js';
import { PersonResolver } from './people/person.resolver.js';
import { SignInThrottle } from './people/sign-in-throttle.js';
import { AssignmentService } from './plans/assignment.service.js';
import { CountResolver } from './plans/count.resolver.js';
import { PlanService } from './plans/plan.service.js';
import { QueryService } from './reviews/query.service.js';
import { ReviewResolver } from './reviews/review.resolver.js';
import { ReviewService } from './reviews/review.service.js';
import { RulingService } from './reviews/ruling.service.js';
import { AuditService } from './seals/audit.service.js';
import { SealResolver } from './seals/seal.resolver.js';
import { SealService } from './seals/seal.service.js';
import { SheetController } from './sheets/sheet.controller.js';
import { SheetService } from './sheets/sheet.service.js';
import { TallyResolver } from './tallies/tally.resolver.js';
import { TallyService } from './tallies/tally.service.js';

/** The one list of what the server is made of. */
@Module({
  imports: [GraphQLModule.forRoot(graphqlOptions)],
  controllers: [HealthController, SheetController],
  providers: [
    Database,
    SignInThrottle,
    PeopleService,
    PlanService,
    AssignmentService,
    TallyService,
    ReviewService,
    RulingService,
    QueryService,
    SealService,
    AuditService,
    SheetService,
    PersonResolver,
    CountResolver,
    TallyResolver,
    ReviewResolver,
    SealResolver,
    { provide: APP_FILTER, useClass: RefusalFilter },
  ],
})
export class AppModule implements NestModule {
  configure(consumer: MiddlewareConsumer): void {
    consumer.apply(SessionMiddleware).forRoutes('graphql', 'field-sheets');
  }
}

import { lazy, type ComponentType, type LazyExoticComponent } from 'react';
import { loadMessages } from './ui/language.js';

// Pages that nobody needs to write a tally: each is loaded when it is first opened. The service worker
// keeps their files like all others, so they open without a network too.

/** A page of the desk, with its texts and what the desk's pages look like: a phone at the shore needs none of it. */
function deskPage<Props>(
  load: () => Promise<{ readonly default: ComponentType<Props> }>,
): LazyExoticComponent<ComponentType<Props>> {
  return lazy(async () => {
    const [page] = await Promise.all([
      load(),
      loadMessages('reviews', 'seals'),
      import('./desk-styles.js'),
    ]);
    return page;
  });
}

export const AgreementPage = deskPage(async () => ({
  default: (await import('./reviews/agreement-page.js')).AgreementPage,
}));
export const DisagreementPage = deskPage(async () => ({
  default: (await import('./reviews/disagreement-page.js')).DisagreementPage,
}));
export const DisagreementsPage = deskPage(async () => ({
  default: (await import('./reviews/disagreements-page.js')).DisagreementsPage,
}));
export const LinksPage = deskPage(async () => ({
  default: (await import('./reviews/links-page.js')).LinksPage,
}));
export const AuditPage = deskPage(async () => ({
  default: (await import('./seals/audit-page.js')).AuditPage,
}));
export const CompiledPage = deskPage(async () => ({
  default: (await import('./seals/compiled-page.js')).CompiledPage,
}));
export const CoveragePage = lazy(async () => ({
  default: (await import('./plans/coverage-page.js')).CoveragePage,
}));
export const PlanPage = lazy(async () => ({
  default: (await import('./plans/plan-page.js')).PlanPage,
}));
export const ImportPage = lazy(async () => ({
  default: (await import('./plans/import-page.js')).ImportPage,
}));
export const CountsPage = lazy(async () => ({
  default: (await import('./plans/counts-page.js')).CountsPage,
}));
export const PeoplePage = lazy(async () => ({
  default: (await import('./people/people-page.js')).PeoplePage,
}));
export const SignInPage = lazy(async () => ({
  default: (await import('./people/sign-in-page.js')).SignInPage,
}));
export const InvitePage = lazy(async () => ({
  default: (await import('./people/invite-page.js')).InvitePage,
}));
export const AssignmentsPage = lazy(async () => ({
  default: (await import('./tallies/assignments-page.js')).AssignmentsPage,
}));

import { lazy } from 'react';
import { loadMessages } from './ui/language.js';

/**
 * The pages of the desk, loaded when they are first opened: a phone at the shore never needs them.
 */
export const AgreementPage = lazy(async () => ({
  default: (await withMessages(import('./reviews/agreement-page.js'))).AgreementPage,
}));
export const DisagreementPage = lazy(async () => ({
  default: (await withMessages(import('./reviews/disagreement-page.js'))).DisagreementPage,
}));
export const DisagreementsPage = lazy(async () => ({
  default: (await withMessages(import('./reviews/disagreements-page.js'))).DisagreementsPage,
}));
export const LinksPage = lazy(async () => ({
  default: (await withMessages(import('./reviews/links-page.js'))).LinksPage,
}));
export const AuditPage = lazy(async () => ({
  default: (await withMessages(import('./seals/audit-page.js'))).AuditPage,
}));
export const CompiledPage = lazy(async () => ({
  default: (await withMessages(import('./seals/compiled-page.js'))).CompiledPage,
}));

/** A page, once its messages are there as well. */
async function withMessages<Page>(page: Promise<Page>): Promise<Page> {
  const [loaded] = await Promise.all([page, loadMessages('reviews', 'seals')]);
  return loaded;
}

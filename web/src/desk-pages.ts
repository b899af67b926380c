import { lazy } from 'react';

/**
 * The pages of the desk, loaded when they are first opened: a phone at the shore never needs them.
 */
export const AgreementPage = lazy(async () => ({
  default: (await import('./reviews/agreement-page.js')).AgreementPage,
}));
export const DisagreementPage = lazy(async () => ({
  default: (await import('./reviews/disagreement-page.js')).DisagreementPage,
}));
export const DisagreementsPage = lazy(async () => ({
  default: (await import('./reviews/disagreements-page.js')).DisagreementsPage,
}));
export const LinksPage = lazy(async () => ({
  default: (await import('./reviews/links-page.js')).LinksPage,
}));
export const AuditPage = lazy(async () => ({
  default: (await import('./seals/audit-page.js')).AuditPage,
}));
export const CompiledPage = lazy(async () => ({
  default: (await import('./seals/compiled-page.js')).CompiledPage,
}));

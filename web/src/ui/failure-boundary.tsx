import { t } from '@lingui/core/macro';
import { Trans } from '@lingui/react/macro';
import { Component, type ReactNode } from 'react';
import { Notice } from './notice.js';
import { Page } from './page.js';

/** Catches what went wrong while a page was drawn, so that nobody is left with a blank screen. */
export class FailureBoundary extends Component<
  { readonly children: ReactNode },
  { readonly hasFailed: boolean }
> {
  override state = { hasFailed: false };

  static getDerivedStateFromError(): { readonly hasFailed: boolean } {
    return { hasFailed: true };
  }

  override render(): ReactNode {
    if (!this.state.hasFailed) return this.props.children;
    return (
      <Page title={t`This page could not be shown`} width="reading">
        <Notice kind="refused" title={t`Something went wrong on this page.`}>
          <p>
            <Trans>
              What you entered in a tally is kept on this device. Reload the page; if it happens
              again, tell whoever runs this server what you did.
            </Trans>
          </p>
          <p>
            <button type="button" className="button" onClick={() => window.location.reload()}>
              <Trans>Reload</Trans>
            </button>
          </p>
        </Notice>
      </Page>
    );
  }
}

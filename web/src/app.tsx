import { i18n } from '@lingui/core';
import { I18nProvider } from '@lingui/react';
import { t } from '@lingui/core/macro';
import { Trans } from '@lingui/react/macro';
import { Suspense, useCallback, useEffect, useState, type ReactNode } from 'react';
import { Provider, type Client } from 'urql';
import { Link, Redirect, Route, Switch, useLocation, useParams } from 'wouter';
import { makeClient } from './graphql/client.js';
import {
  AgreementPage,
  AssignmentsPage,
  AuditPage,
  CompiledPage,
  CountsPage,
  CoveragePage,
  DisagreementPage,
  DisagreementsPage,
  ImportPage,
  InvitePage,
  LinksPage,
  PeoplePage,
  PlanPage,
  SignInPage,
} from './later-pages.js';
import { SessionProvider, useSession } from './people/session.js';
import { CountFrame, Masthead, startOf, useCountInFrame } from './plans/count-frame.js';
import { useKeptOwnParts } from './tallies/use-kept.js';
import { forgetKeptAtStart } from './tallies/kept-at-start.js';
import { KeepOwnParts } from './tallies/keep-own-parts.js';
import { SendKeptTallies } from './tallies/send-kept-tallies.js';
import { TalliesThatWait } from './tallies/tallies-that-wait.js';
import { TallyPage } from './tallies/tally-page.js';
import { Announcer } from './ui/announcer.js';
import { paintSoon } from './ui/first-paint.js';
import { FailureBoundary } from './ui/failure-boundary.js';
import { NewVersion } from './ui/new-version.js';
import { Notice } from './ui/notice.js';
import { useOnline } from './ui/online.js';
import { Page } from './ui/page.js';
import { useLanguage } from './ui/language.js';
import { idFromPath, pathOf } from './ui/path.js';
import { Skeleton } from './ui/skeleton.js';

/** The whole web app. `connect` makes the connection; tests pass their own. */
export function App(props: { readonly connect?: () => Client }): ReactNode {
  const connect = props.connect ?? makeClient;
  const [{ client, turn }, setConnection] = useState(() => ({ client: connect(), turn: 0 }));
  // A new client forgets every cached answer: nobody may see what the last person saw.
  const restart = useCallback(
    () => setConnection((last) => ({ client: connect(), turn: last.turn + 1 })),
    [connect],
  );
  const language = useLanguage();
  useEffect(() => {
    forgetKeptAtStart();
    paintSoon();
  }, []);
  return (
    <I18nProvider i18n={i18n}>
      <Provider value={client}>
        {/* Another language draws every page anew: texts are looked up while drawing. */}
        <Announcer key={language}>
          <SessionProvider key={turn} restart={restart}>
            <div className="frame">
              <NewVersion />
              <Pages />
              <footer className="foot">
                <Trans>
                  Countersign: several observers’ counts, one compiled count that anyone can trace.
                </Trans>{' '}
                <Link href="/counts">
                  <Trans>All counts</Trans>
                </Link>
              </footer>
            </div>
          </SessionProvider>
        </Announcer>
      </Provider>
    </I18nProvider>
  );
}

function Pages(): ReactNode {
  const { person } = useSession();
  return (
    <Switch>
      <Route path="/sign-in">
        <HomeMasthead />
        <Opening>
          <SignInPage aside={<TalliesThatWait />} />
        </Opening>
      </Route>
      <Route path="/invite/:token">
        {({ token }) => (
          <>
            <HomeMasthead />
            <Opening>
              <InvitePage token={idFromPath(token)} />
            </Opening>
          </>
        )}
      </Route>
      <Route>{person === null ? <ToSignIn /> : <SignedInPages personId={person.id} />}</Route>
    </Switch>
  );
}

function HomeMasthead(): ReactNode {
  return (
    <Masthead
      title="Countersign"
      home="/"
      place={t`Several counts of one waterbody, compiled in the open.`}
    />
  );
}

function ToSignIn(): ReactNode {
  const [location] = useLocation();
  return (
    <Redirect
      to={location === '/' ? '/sign-in' : `/sign-in?next=${encodeURIComponent(location)}`}
      replace
    />
  );
}

function SignedInPages(props: { readonly personId: string }): ReactNode {
  return (
    <>
      <SendKeptTallies personId={props.personId} />
      <KeepOwnParts personId={props.personId} />
      <Switch>
        <Route path="/counts/:countId/*?">
          {({ countId }) => (
            <CountFrame countId={idFromPath(countId)}>
              <Opening>
                <PagesOfCount />
              </Opening>
            </CountFrame>
          )}
        </Route>
        <Route>
          <HomeMasthead />
          <Opening>
            <Switch>
              <Route path="/">
                <CountsPage stay={false} />
              </Route>
              <Route path="/counts">
                <CountsPage stay />
              </Route>
              <Route path="/import">
                <ImportPage />
              </Route>
              <Route path="/plan">
                <PlanPage />
              </Route>
              <Route>
                <NoSuchPage />
              </Route>
            </Switch>
          </Opening>
        </Route>
      </Switch>
    </>
  );
}

function PagesOfCount(): ReactNode {
  return (
    <Switch>
      <Route path="/counts/:countId" component={StartPage} />
      <Route path="/counts/:countId/assignments">
        {({ countId }) => <AssignmentsPage countId={idFromPath(countId)} />}
      </Route>
      <Route path="/counts/:countId/assignments/:assignmentId">
        {({ countId, assignmentId }) => (
          <TallyPage
            key={assignmentId}
            countId={idFromPath(countId)}
            assignmentId={idFromPath(assignmentId)}
          />
        )}
      </Route>
      <Route path="/counts/:countId/coverage">
        {({ countId }) => <CoveragePage countId={idFromPath(countId)} />}
      </Route>
      <Route path="/counts/:countId/people">
        {({ countId }) => <PeoplePage countId={idFromPath(countId)} />}
      </Route>
      <Route path="/counts/:countId/disagreements">
        {({ countId }) => <DisagreementsPage countId={idFromPath(countId)} />}
      </Route>
      <Route path="/counts/:countId/disagreements/:disagreementId">
        {({ countId, disagreementId }) => (
          <DisagreementPage
            key={disagreementId}
            countId={idFromPath(countId)}
            disagreementId={idFromPath(disagreementId)}
          />
        )}
      </Route>
      <Route path="/counts/:countId/links">
        {({ countId }) => <LinksPage countId={idFromPath(countId)} />}
      </Route>
      <Route path="/counts/:countId/agreement">
        {({ countId }) => <AgreementPage countId={idFromPath(countId)} />}
      </Route>
      <Route path="/counts/:countId/compiled">
        {({ countId }) => <CompiledPage countId={idFromPath(countId)} />}
      </Route>
      <Route path="/counts/:countId/audit">
        {({ countId }) => <AuditPage countId={idFromPath(countId)} />}
      </Route>
      <Route>
        <NoSuchPage />
      </Route>
    </Switch>
  );
}

/** The bare address of a count leads to where this person's work is. */
function StartPage(): ReactNode {
  const count = useCountInFrame();
  const { person } = useSession();
  const { countId } = useParams<{ countId: string }>();
  const id = idFromPath(countId);
  const online = useOnline();
  const kept = useKeptOwnParts(person?.id ?? '', count === null && !online);
  if (count !== null) return <Redirect to={pathOf('counts', id, startOf(count))} replace />;
  // Out of range, the work that is kept on the phone is where one starts.
  return kept?.some((part) => part.id === id) === true ? (
    <Redirect to={pathOf('counts', id, 'assignments')} replace />
  ) : (
    <LoadingPage />
  );
}

/** A page while its file is loaded, and the word to say where that or the page itself fails. */
function Opening(props: { readonly children: ReactNode }): ReactNode {
  const [location] = useLocation();
  return (
    <FailureBoundary key={location}>
      <Suspense fallback={<LoadingPage />}>{props.children}</Suspense>
    </FailureBoundary>
  );
}

function LoadingPage(): ReactNode {
  return (
    <main data-width="reading">
      <Skeleton rows={8} label={t`Loading the page.`} />
    </main>
  );
}

function NoSuchPage(): ReactNode {
  return (
    <Page title={t`There is no such page`} width="reading">
      <Notice kind="plain">
        <p>
          <Trans>
            The address may be mistyped or from an older link.{' '}
            <a href="/">Start again from your counts.</a>
          </Trans>
        </p>
      </Notice>
    </Page>
  );
}

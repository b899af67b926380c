import { i18n, type MessageDescriptor } from '@lingui/core';
import { msg, t } from '@lingui/core/macro';
import { Trans } from '@lingui/react/macro';
import { createContext, useContext, type ReactNode } from 'react';
import { useMutation, useQuery } from 'urql';
import { Link, useLocation } from 'wouter';
import type { Act, CountState, Role } from '../graphql/generated/graphql.js';
import { SignOut } from '../people/documents.js';
import { useKeptOwnParts } from '../tallies/use-kept.js';
import { useSession } from '../people/session.js';
import { usePainted } from '../ui/first-paint.js';
import { useOnline } from '../ui/online.js';
import { pathOf } from '../ui/path.js';
import { LanguageChoice } from '../ui/language-choice.js';
import { ThemeChoice } from '../ui/theme.js';
import { longDate } from '../ui/words.js';
import { CountHead } from './documents.js';
import { stateName } from './state-words.js';

/** What the frame knows about the count; `null` while out of range. */
export interface CountInFrame {
  readonly id: string;
  readonly name: string;
  readonly waterbody: string;
  readonly date: string;
  readonly timeZone: string;
  readonly state: CountState;
  readonly myRoles: readonly Role[];
  readonly may: readonly Act[];
}

const CountContext = createContext<CountInFrame | null>(null);

export function useCountInFrame(): CountInFrame | null {
  return useContext(CountContext);
}

interface Destination {
  readonly path: string;
  readonly name: MessageDescriptor;
  readonly act: Act;
  /** Another act whose people have the page too. */
  readonly orAct?: Act;
}

/** The pages of a count, in the order of the work; each is shown to those who may use it now. */
const destinations: readonly Destination[] = [
  { path: 'assignments', name: msg`My assignments`, act: 'SUBMIT_TALLY' },
  { path: 'coverage', name: msg`Coverage`, act: 'SEE_COVERAGE' },
  { path: 'people', name: msg`People`, act: 'INVITE' },
  { path: 'disagreements', name: msg`Disagreements`, act: 'REVIEW' },
  { path: 'links', name: msg`Double counts`, act: 'REVIEW' },
  { path: 'agreement', name: msg`Agreement`, act: 'REVIEW', orAct: 'SEE_OWN_AGREEMENT' },
  { path: 'compiled', name: msg`Compiled count`, act: 'SEE_COMPILED' },
  { path: 'audit', name: msg`Audit trail`, act: 'SEE_AUDIT' },
];

/** Where somebody starts in a count: compilers at the disagreements, leaders at coverage, observers at their work. */
export function startOf(count: {
  readonly myRoles: readonly Role[];
  readonly may: readonly Act[];
}): string {
  if (count.myRoles.includes('COMPILER') && count.may.includes('REVIEW')) return 'disagreements';
  if (count.may.includes('SEE_COVERAGE')) return 'coverage';
  if (count.myRoles.includes('OBSERVER') || count.may.includes('SUBMIT_TALLY'))
    return 'assignments';
  return destinations.find(({ act }) => count.may.includes(act))?.path ?? 'assignments';
}

/** The frame around every page of one count: whose count it is, who is signed in, where to go. */
export function CountFrame(props: {
  readonly countId: string;
  readonly children: ReactNode;
}): ReactNode {
  const [{ data }] = useQuery({ query: CountHead, variables: { id: props.countId } });
  const { person } = useSession();
  const count = data?.count ?? null;
  const keptParts = useKeptOwnParts(person?.id ?? '', count === null);
  const kept = keptParts?.find(({ id }) => id === props.countId) ?? null;
  const named = count ?? kept;
  const isPainted = usePainted();
  return (
    <CountContext value={count}>
      <Masthead
        title={named?.name ?? 'Countersign'}
        home={pathOf('counts', props.countId)}
        place={named === null ? '\u00a0' : placeWords(named, count?.state, isPainted)}
      >
        {count === null ? (
          <NavigationOutOfRange assignmentsOf={kept?.id ?? null} />
        ) : (
          <CountNavigation count={count} />
        )}
      </Masthead>
      {props.children}
    </CountContext>
  );
}

function placeWords(
  count: { readonly waterbody: string; readonly date: string },
  state: CountState | undefined,
  withDate: boolean,
): string {
  const date = withDate ? [longDate(count.date)] : [];
  const parts = [count.waterbody, ...date, ...(state ? [stateName(state)] : [])];
  return parts.join(' · ');
}

function CountNavigation(props: { readonly count: CountInFrame }): ReactNode {
  const { count } = props;
  const [location] = useLocation();
  const shown = destinations.filter(
    ({ act, orAct, path }) =>
      count.may.includes(act) ||
      (orAct !== undefined && count.may.includes(orAct)) ||
      (path === 'assignments' && count.myRoles.includes('OBSERVER')),
  );
  return (
    <nav aria-label={t`Pages of this count`}>
      <ul>
        {shown.map(({ path, name }) => {
          const here = location.split('/')[3] === path;
          return (
            <li key={path}>
              <Link
                href={pathOf('counts', count.id, path)}
                {...(here ? { 'aria-current': 'page' } : {})}
              >
                {i18n._(name)}
              </Link>
            </li>
          );
        })}
      </ul>
    </nav>
  );
}

/** Before the server has said what may be done: the way to what is kept on the phone, or its room. */
function NavigationOutOfRange(props: { readonly assignmentsOf: string | null }): ReactNode {
  const { assignmentsOf } = props;
  return (
    <nav aria-label={t`Pages of this count`} aria-hidden={assignmentsOf === null}>
      <ul>
        <li>
          {assignmentsOf === null ? (
            <a aria-hidden="true">&nbsp;</a>
          ) : (
            <Link href={pathOf('counts', assignmentsOf, 'assignments')}>
              <Trans>My assignments</Trans>
            </Link>
          )}
        </li>
      </ul>
    </nav>
  );
}

/** The head of every page. */
export function Masthead(props: {
  readonly title: string;
  readonly home: string;
  readonly place: string;
  readonly children?: ReactNode;
}): ReactNode {
  const { person, changed } = useSession();
  const [, signOut] = useMutation(SignOut);
  const [, navigate] = useLocation();
  const online = useOnline();

  async function leave(): Promise<void> {
    const answer = await signOut({});
    if (answer.error) return;
    changed();
    navigate('/sign-in');
  }

  return (
    <>
      <a className="skip" href="#content">
        <Trans>To the content</Trans>
      </a>
      <header className="masthead">
        <div className="masthead-top">
          <div>
            <div className="masthead-name">
              <Link href={props.home}>{props.title}</Link>
            </div>
            <div className="masthead-place">{props.place}</div>
          </div>
          <div className="masthead-person">
            {person === null ? null : <strong>{person.name}</strong>}
            {person === null ? null : (
              <Link href="/counts" className="at-the-desk">
                <Trans>All counts</Trans>
              </Link>
            )}
            <LanguageChoice />
            <ThemeChoice />
            {person === null ? null : (
              <button
                type="button"
                className="button"
                data-kind="quiet"
                disabled={!online}
                onClick={() => void leave()}
              >
                <Trans>Sign out</Trans>
              </button>
            )}
          </div>
        </div>
        {props.children}
      </header>
      {online ? null : (
        <p className="line-offline" role="status">
          <Trans>No connection. What you enter is kept on this device.</Trans>
        </p>
      )}
    </>
  );
}

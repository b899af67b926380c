import { i18n } from '@lingui/core';
import { screen, within } from '@testing-library/react';
import { afterEach, describe, expect, test } from 'vitest';
import { CAUTIONS } from '../../server/core/cautions.js';
import type { CountCoverageQuery } from '../../web/src/graphql/generated/graphql.js';
import { gapOf } from '../../web/src/plans/coverage-gaps.js';
import { chooseLanguage } from '../../web/src/ui/language.js';
import { fakeServer } from './fake-server.js';
import { openApp, useCleanBrowser } from './open-app.js';

type Count = CountCoverageQuery['count'];
type Entry = Count['coverage'][number];

const ann = { id: 'o1', name: 'Ann Marsh' };
const ben = { id: 'o2', name: 'Ben Pole' };
const cleo = { id: 'o3', name: 'Cleo Reed' };

const entry = (section: string, change: Partial<Entry> = {}): Entry => ({
  section: { id: section, name: section },
  window: { id: 'w1' },
  assigned: [],
  submitted: [],
  partial: [],
  independentTallies: 0,
  ...change,
});

describe('what a section lacks', () => {
  test('those still to come are taken as coming while the window is open', () => {
    const planned = entry('s1', { assigned: [ann, ben], submitted: [ann], independentTallies: 1 });
    expect(gapOf(planned, false)).toBeNull();
    expect(gapOf(planned, true)).toBe('no-second');
  });

  test('nobody, one, or part of it only', () => {
    expect(gapOf(undefined, false)).toBe('nobody');
    expect(gapOf(entry('s1'), false)).toBe('nobody');
    expect(gapOf(entry('s1', { assigned: [ann] }), false)).toBe('no-second');
    expect(gapOf(entry('s1', { assigned: [ann] }), true)).toBe('nobody');
    const partial = { assigned: [ann], submitted: [ann], partial: [ann] };
    expect(gapOf(entry('s1', partial), false)).toBe('part-only');
  });

  test('two in one party are one, however many names there are', () => {
    const party = { assigned: [ann, ben], submitted: [ann, ben], independentTallies: 1 };
    expect(gapOf(entry('s1', party), false)).toBe('no-second');
  });
});

const window = {
  id: 'w1',
  start: '2027-01-16T08:00:00-05:00',
  end: '2027-01-16T11:00:00-05:00',
  slackMinutes: 20,
  closed: false,
};
const square = [
  [
    [-79.5, 44.2],
    [-79.4, 44.2],
    [-79.4, 44.3],
    [-79.5, 44.2],
  ],
];
const head = {
  __typename: 'Count',
  id: 'c1',
  name: 'Lake Test, January',
  waterbody: 'Lake Test',
  date: '2027-01-16',
  timeZone: 'America/Toronto',
  state: 'OPEN',
  myRoles: ['LEADER'],
  may: ['SEE_COVERAGE', 'PLAN', 'CLOSE_WINDOW'],
};
const sections = [
  { id: 's1', name: 'North Bay', polygon: square },
  { id: 's2', name: 'Mid Lake', polygon: square },
  { id: 's3', name: 'Outlet', polygon: square },
];
const assignment = (id: string, person: typeof ann, section: string, more: object = {}) => ({
  id,
  person,
  sections: [{ id: section, name: section }],
  window: { id: 'w1' },
  vantage: null,
  submitted: false,
  tally: null,
  ...more,
});

const count = {
  ...head,
  windows: [window],
  sections,
  vantages: [],
  shoreline: [
    {
      __typename: 'ShorePart',
      isArea: false,
      lines: [
        [
          [-79.5, 44.2],
          [-79.4, 44.3],
        ],
      ],
    },
    { __typename: 'ShorePart', isArea: true, lines: square },
  ],
  people: [],
  coverage: [
    entry('s1', { assigned: [ann, ben], submitted: [ann, cleo], independentTallies: 1 }),
    entry('s2', { assigned: [ann], submitted: [ann], partial: [ann] }),
  ],
  assignments: [
    assignment('a1', ann, 's1', {
      vantage: { id: 'v1', name: 'Old pier' },
      submitted: true,
      tally: { id: 't1', version: 2, submittedAt: '2027-01-16T11:02:00-05:00' },
    }),
    assignment('a2', ben, 's1'),
    assignment('a3', ann, 's2', { submitted: true }),
  ],
};

describe('the leader’s page of coverage', () => {
  useCleanBrowser();
  afterEach(() => i18n.activate('en', ['en-GB']));

  async function open(missing = 'What is missing'): Promise<void> {
    const leader = { __typename: 'Person', id: 'l1', name: 'Lou Tern' };
    fakeServer({
      Me: { me: leader },
      MyCounts: { counts: [head] },
      CountHead: { count: head },
      CountCoverage: { count },
    });
    openApp('/counts/c1/coverage');
    await screen.findByRole('heading', { name: missing });
  }

  test('has the shoreline under the sections, closed only where it is an outline', async () => {
    await open();
    const paths = [...document.querySelectorAll('svg.map path')].map((path) => ({
      kind: path.getAttribute('class'),
      isClosed: path.getAttribute('d')?.endsWith('Z'),
    }));
    const drawn = paths.filter(({ kind }) => kind === 'map-shore' || kind === 'map-section');
    expect(drawn.slice(0, 3)).toEqual([
      { kind: 'map-shore', isClosed: false },
      { kind: 'map-shore', isClosed: true },
      { kind: 'map-section', isClosed: true },
    ]);
    expect(drawn).toHaveLength(5);
  });

  test('names the sections that nobody counts, and those without a second observer', async () => {
    await open();
    const list = screen.getByRole('region', { name: 'What is missing' });
    const items = within(list).getAllByRole('listitem');
    expect(items.map(({ textContent }) => textContent)).toEqual([
      'Counted by nobody: Outlet.',
      'Seen only in part: Mid Lake.',
    ]);
  });

  test('says of each section who counts it, from where, and whose tally is in', async () => {
    await open();
    const table = screen.getByRole('region', { name: 'Coverage by section and window' });
    const row = (name: string): HTMLElement => within(table).getByRole('row', { name });
    const people = (name: RegExp): readonly (string | null)[] =>
      within(within(table).getByRole('row', { name }))
        .queryAllByRole('listitem')
        .map(({ textContent }) => textContent);
    expect(people(/^North Bay/u)).toEqual([
      '●Ann Marsh, from Old pier, in at 11:02, corrected',
      '○Ben Pole, from where they choose, not in yet',
      '●Cleo Reed, in another’s party, in',
    ]);
    expect(people(/^Mid Lake/u)).toEqual([
      '◐Ann Marsh, from where they choose, in, saw part of it',
    ]);
    expect(row('Outlet nobody assigned').textContent).toContain('nobody assigned');
  });

  test('offers the leader each assignment’s field sheet on paper', async () => {
    await open();
    const links = await screen.findAllByRole('link', { name: /field sheet of .* as PDF/u });
    const [first] = count.assignments;
    expect(links).toHaveLength(2 * count.assignments.length);
    expect(links.slice(0, 2).map((link) => link.getAttribute('href'))).toEqual([
      `/field-sheets/${first?.id ?? ''}.pdf?paper=a4&lang=en`,
      `/field-sheets/${first?.id ?? ''}.pdf?paper=letter&lang=en`,
    ]);
  });

  test('shows the cautions of the field while people still go out', async () => {
    await open();
    expect(screen.getByText('Before you go out').closest('details')?.open).toBe(true);
    screen.getByText(/^Ice: keep off it/u);
  });

  test('says all of it in French, with field sheets and cautions in French', async () => {
    await chooseLanguage('fr');
    await open('Ce qui manque');
    screen.getByText(
      'Jusqu’ici, sur 3 secteurs, aucun n’a encore deux relevés indépendants, 1 n’en a qu’un et 2 n’ont encore aucun relevé complet.',
    );
    const table = screen.getByRole('region', { name: 'Couverture par secteur et créneau' });
    expect(within(table).getAllByRole('listitem')[0]?.textContent).toBe(
      '●Ann Marsh, depuis\u00a0: Old pier, reçu à 11:02, corrigé',
    );
    const [sheet] = screen.getAllByRole('link', { name: /fiche de terrain de Ann Marsh/u });
    expect(sheet?.getAttribute('href')).toBe('/field-sheets/a1.pdf?paper=a4&lang=fr');
    for (const { fr } of CAUTIONS) expect(document.body.textContent).toContain(fr);
    // The kind of the count and its date in the head of the page.
    screen.getByText('Lake Test · samedi 16 janvier 2027 · ouvert');
  });
});

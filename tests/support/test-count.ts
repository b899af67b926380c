import { v7 as newId } from 'uuid';
import { ApiClient } from './api-client.js';
import { square } from './small-folder.js';

/** People of the test count, by what they are there for. Ids are their first names. */
const PEOPLE = [
  { id: 'lea', name: 'Lea Bystrom', roles: ['LEADER'] },
  { id: 'kim', name: 'Kim Abara', roles: ['COMPILER'] },
  { id: 'kai', name: 'Kai Moreau', roles: ['COMPILER', 'OBSERVER'] },
  { id: 'ola', name: 'Ola Ferrant', roles: ['OBSERVER'] },
  { id: 'pia', name: 'Pia Osei', roles: ['OBSERVER'] },
  { id: 'uma', name: 'Uma Delacroix', roles: ['OBSERVER'] },
] as const;
export type PersonId = (typeof PEOPLE)[number]['id'];

const WINDOW = {
  w1: { start: '2027-01-16T08:00:00-05:00', end: '2027-01-16T11:00:00-05:00' },
  w2: { start: '2027-01-16T13:00:00-05:00', end: '2027-01-16T16:00:00-05:00' },
};

function places(): string {
  const section = (id: string, name: string, west: number): object => ({
    type: 'Feature',
    properties: { kind: 'section', id, name },
    geometry: { type: 'Polygon', coordinates: [square(west, 44)] },
  });
  const features = [
    section('s1', 'North Bay', -79.06),
    section('s2', 'Mill Reach', -79.02),
    section('s3', 'South Bay', -78.98),
    {
      type: 'Feature',
      properties: { kind: 'vantage', id: 'v1', name: 'Dock' },
      geometry: { type: 'Point', coordinates: [-79.01, 43.999] },
    },
  ];
  return JSON.stringify({ type: 'FeatureCollection', features });
}

export interface TestCountOptions {
  readonly id?: string;
  readonly windows?: readonly ('w1' | 'w2')[];
  /** Who counts which sections; in w1 unless another window is named. */
  readonly assignments?: readonly (readonly [PersonId, readonly string[], ('w1' | 'w2')?])[];
  readonly protocol?: object;
}

/** A planned count with its people signed in. */
export interface TestCount {
  readonly id: string;
  readonly planner: ApiClient;
  readonly as: Readonly<Record<PersonId, ApiClient>>;
  submit(person: PersonId, tally: TestTally): Promise<{ id: string; version: number }>;
  close(window?: string): Promise<void>;
}

/** Wherever the application runs: in this process or another. */
export interface Reachable {
  client(): ApiClient;
  /** Signed in as someone who may plan counts. */
  planner(): Promise<ApiClient>;
}

/** Plans a count and assigns its observers; its people come by invite link when they are first used. */
export async function planTestCount(
  app: Reachable,
  options: TestCountOptions = {},
): Promise<TestCount> {
  const { id = newId(), windows = ['w1'], assignments = [], protocol } = options;
  const planner = await app.planner();
  await planner.ask('mutation ($input: PlanCountInput!) { planCount(input: $input) { id } }', {
    input: {
      id,
      name: 'Mill Lake',
      waterbody: 'Mill Lake',
      date: '2027-01-16',
      timeZone: 'America/Toronto',
      windows: windows.map((window) => ({ id: window, ...WINDOW[window], slackMinutes: 10 })),
      places: places(),
      people: PEOPLE,
      protocol: protocol && JSON.stringify(protocol),
    },
  });
  for (const [personId, sectionIds, windowId = 'w1'] of assignments) {
    const input = { id: newId(), countId: id, personId, sectionIds, windowId };
    await planner.ask('mutation ($input: AssignInput!) { assign(input: $input) { id } }', {
      input,
    });
  }
  const clients = PEOPLE.map((person) => {
    const signInFirst = (client: ApiClient): Promise<void> =>
      joinByInvite(client, planner, id, person.id);
    return [person.id, new ApiClient(planner.url, signInFirst)] as const;
  });
  const as = Object.fromEntries(clients) as Record<PersonId, ApiClient>;
  return {
    id,
    planner,
    as,
    submit: async (person, tally) => {
      const input = aTally({ countId: id, ...tally });
      const { submitTally } = await as[person].ask<{
        submitTally: { id: string; version: number };
      }>(SUBMIT, { input });
      return submitTally;
    },
    close: async (window = 'w1') => {
      await planner.ask(CLOSE, { countId: id, windowId: window });
    },
  };
}

export const SUBMIT =
  'mutation ($input: TallyInput!) { submitTally(input: $input) { id version replaces reason total submittedAt lines { id taxon number } } }';
const CLOSE =
  'mutation ($countId: ID!, $windowId: ID!) { closeWindow(countId: $countId, windowId: $windowId) { state } }';

/** Signs somebody in by a fresh link. */
export async function invited(
  app: Reachable,
  leader: ApiClient,
  countId: string,
  personId: string,
): Promise<ApiClient> {
  const client = app.client();
  await joinByInvite(client, leader, countId, personId);
  return client;
}

async function joinByInvite(
  client: ApiClient,
  leader: ApiClient,
  countId: string,
  personId: string,
): Promise<void> {
  const { invite } = await leader.ask<{ invite: { path: string } }>(
    'mutation ($countId: ID!, $personId: ID!) { invite(countId: $countId, personId: $personId) { path } }',
    { countId, personId },
  );
  await client.acceptInvite(invite.path);
}

export interface TestTally {
  readonly id?: string;
  readonly countId?: string;
  readonly sectionIds?: readonly string[];
  readonly windowId?: string;
  readonly partyIds?: readonly string[];
  readonly start?: string;
  readonly end?: string;
  readonly coverage?: number;
  readonly seenArea?: readonly (readonly (readonly number[])[])[];
  readonly conditions?: object;
  readonly replaces?: string;
  readonly reason?: string;
  readonly lines?: readonly object[];
  readonly samples?: readonly object[];
}

/** A valid tally; a test says only what it is about. */
export function aTally(tally: TestTally): object {
  return {
    id: newId(),
    sectionIds: ['s1'],
    windowId: 'w1',
    start: '2027-01-16T08:15:00-05:00',
    end: '2027-01-16T10:30:00-05:00',
    scope: 'all-waterbirds',
    coverage: 1,
    lines: [aLine()],
    ...tally,
  };
}

export function aLine(line: object = {}): object {
  return { id: newId(), taxon: 'Aythya marila', number: 100, method: 'block', ...line };
}

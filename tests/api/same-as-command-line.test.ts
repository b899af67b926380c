import { readFile } from 'node:fs/promises';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { runCommand } from '../../server/cli/command.js';
import type { Result } from '../../server/core/model/result.js';
import type { Ruling } from '../../server/core/model/ruling.js';
import { taxonName } from '../../server/core/taxa/taxon-name.js';
import { PROJECT_ROOT } from '../../server/project-root.js';
import type { ApiClient } from '../support/api-client.js';
import { TestApp } from '../support/start-app.js';
import { invited } from '../support/test-count.js';

const FOLDER = path.join(PROJECT_ROOT, 'scenarios', 'lake-emberlow');
const RULINGS = path.join(FOLDER, 'rulings.json');
const ID = 'lake-emberlow';

const COMPILED = `query ($id: ID!) { count(id: $id) { state compiled { reported total
  lines { taxon candidates number low high atLeast atMost flyingThrough presentNotCounted }
  ledger { id from to taxon number becauseKind becauseRef } } } }`;

interface Compiled {
  reported: string;
  total: number;
  lines: object[];
  ledger: object[];
}

interface Marked {
  id: string;
  text: string;
  proposals: { text: string }[];
  ruling: { id: string; state: string } | null;
}

let app: TestApp;
let compiler: ApiClient;
let leader: ApiClient;

/** The scenario, taken in through the API like any other folder. */
beforeAll(async () => {
  app = await TestApp.start();
  const planner = await app.planner();
  const names = ['count.json', 'places.geojson', 'tallies.csv', 'marks.csv'];
  const files = await Promise.all(
    names.map(async (name) => ({ name, text: await readFile(path.join(FOLDER, name), 'utf8') })),
  );
  await planner.ask(
    'mutation ($files: [FolderFileInput!]!) { importCount(files: $files) { id state } }',
    { files },
  );
  compiler = await invited(app, planner, ID, 'k1');
  leader = await invited(app, planner, ID, 'l1');
});

afterAll(() => app.stop());

async function commandLine(...args: readonly string[]): Promise<Result<string>> {
  let text = '';
  const code = await runCommand(['reconcile', FOLDER, ...args], {
    out: (part) => {
      text += part;
    },
    err: (part) => {
      throw new Error(part);
    },
    terminal: false,
  });
  expect(code).toBe(0);
  return JSON.parse(text) as Result<string>;
}

async function fromServer(): Promise<Compiled> {
  const { count } = await compiler.ask<{ count: { compiled: Compiled } }>(COMPILED, { id: ID });
  return count.compiled;
}

interface Told {
  text: string;
}

/** What the engine found and what was done with it, in the reader's language. */
async function sentences(
  language: string,
): Promise<{ readonly found: string[]; readonly done: string[] }> {
  compiler.language = language;
  const { count } = await compiler.ask<{
    count: {
      review: {
        disagreements: (Told & { proposals: Told[] })[];
        links: { evidence: Told[] }[];
        cells: { witness: string | null }[];
        agreement: { detection: { warning: string | null }[] };
        rulings: Told[];
      };
      compiled: { ledger: Told[] };
      auditTrail: { entries: Told[] };
    };
  }>(
    `query ($id: ID!) { count(id: $id) {
      review { disagreements { text proposals { text } } links { evidence { text } }
        cells { witness } agreement { detection { warning } } rulings { text } }
      compiled { ledger { text } } auditTrail { entries { text } } } }`,
    { id: ID },
  );
  compiler.language = '*';
  const { disagreements, links, cells, agreement, rulings } = count.review;
  const texts = (told: readonly Told[]): string[] => told.map(({ text }) => text);
  return {
    found: [
      ...disagreements.flatMap((each) => [each.text, ...texts(each.proposals)]),
      ...links.flatMap(({ evidence }) => texts(evidence)),
      ...cells.flatMap(({ witness }) => witness ?? []),
      ...agreement.detection.flatMap(({ warning }) => warning ?? []),
    ],
    done: texts([...rulings, ...count.compiled.ledger, ...count.auditTrail.entries]),
  };
}

function expectSame(server: Compiled, command: Result<string>): void {
  expect(server.reported).toBe(command.reported);
  expect(server.lines).toEqual(command.compiled);
  expect(server.ledger).toEqual(
    command.ledger.map(({ because, ...posting }) => ({
      ...posting,
      becauseKind: because.kind,
      becauseRef: because.ref,
    })),
  );
}

/** A ruling of the file as the page would send it. */
function rulingInput({ id, reason, target, decision }: Ruling): object {
  const taxon = (candidates: readonly string[] | undefined): string | undefined =>
    candidates && taxonName(candidates);
  const { from, to, ...others } = decision as { kind: string; from?: string[]; to?: string[] };
  return {
    id,
    countId: ID,
    reason,
    target,
    decision: { ...others, from: taxon(from), to: taxon(to) },
  };
}

describe('Lake Emberlow compiles alike on the server and on the command line', () => {
  it('without rulings', async () => {
    expectSame(await fromServer(), await commandLine());
  });

  it('with the field marks that came along: one line finer than its marks, and its ruling waits', async () => {
    const marked = `query ($id: ID!) { count(id: $id) { review {
      disagreements(kind: "over-resolved") { id text proposals { text } ruling { id state } } } } }`;
    const listed = async () => {
      const { count } = await compiler.ask<{ count: { review: { disagreements: Marked[] } } }>(
        marked,
        { id: ID },
      );
      return count.review.disagreements;
    };
    const command = (await commandLine()).disagreements.filter(
      ({ kind }) => kind === 'over-resolved',
    );
    expect(command.map(({ lines }) => lines)).toEqual([['o5-s5:04']]);
    expect(await listed()).toEqual(
      command.map(({ id, text, proposals }) => ({
        id,
        text,
        proposals: proposals.map((proposal) => ({ text: proposal.text })),
        ruling: null,
      })),
    );
    const ruling = { id: 'tried', state: 'NEEDS_SECOND' };
    await compiler.ask('mutation ($input: RulingInput!) { giveRuling(input: $input) { state } }', {
      input: {
        id: ruling.id,
        countId: ID,
        disagreementId: command[0]?.id,
        reason: 'No crowns were noted.',
        decision: { kind: 'identify-line', to: 'GRSC/LESC' },
      },
    });
    expect((await listed()).map((each) => each.ruling)).toEqual([ruling]);
    await compiler.ask(
      'mutation { withdrawRuling(rulingId: "tried", reason: "Only tried.") { state } }',
    );
    expect((await listed()).map((each) => each.ruling)).toEqual([null]);
  });

  it('with the same rulings, given one by one and seconded where they have to be', async () => {
    const rulings = JSON.parse(await readFile(RULINGS, 'utf8')) as Ruling[];
    await leader.ask(
      'mutation ($id: ID!) { closeWindow(countId: $id, windowId: "w1") { state } }',
      {
        id: ID,
      },
    );
    let seconded = 0;
    for (const ruling of rulings) {
      const { giveRuling } = await compiler.ask<{ giveRuling: { state: string } }>(
        'mutation ($input: RulingInput!) { giveRuling(input: $input) { state } }',
        { input: rulingInput(ruling) },
      );
      if (giveRuling.state === 'APPLIED') continue;
      expect(giveRuling.state).toBe('NEEDS_SECOND');
      seconded += 1;
      await leader.ask('mutation ($id: ID!) { secondRuling(rulingId: $id) { state } }', {
        id: ruling.id,
      });
    }
    // The compiler counted s5 and s6 herself: two links, two groups and a line touch them.
    expect(seconded).toBe(5);
    const command = await commandLine('--rulings', RULINGS);
    expect(command.rulings.map(({ state }) => state)).toEqual(rulings.map(() => 'applied'));
    expectSame(await fromServer(), command);
  });

  it('in the language of whoever reads it', async () => {
    const english = await sentences('*');
    const french = await sentences('fr-CA, en;q=0.5');
    const command = await commandLine('--rulings', RULINGS);
    // The server was not given the earlier years.
    const disagreements = command.disagreements.filter(({ kind }) => kind !== 'implausible');
    expect(english.found).toEqual([
      ...disagreements.flatMap(({ text, proposals }) => [
        text,
        ...proposals.map((proposal) => proposal.text),
      ]),
      ...command.links.flatMap(({ evidence }) => evidence.map(({ text }) => text)),
      ...command.cells.flatMap(({ witness }) => witness ?? []),
      ...command.agreement.detection.flatMap(({ warning }) => warning ?? []),
    ]);
    for (const part of ['found', 'done'] as const) {
      expect(french[part]).toHaveLength(english[part].length);
      expect(french[part].filter((text, index) => text === english[part][index])).toEqual([]);
    }
    expect(french.found.join('\n')).toMatch(
      /^Oiseaux comptés dans le secteur West Basin \(groupe Aythya sp\.\)\u00a0: \d\u202f\d{3} par [^]+Maintenir l’ébauche\u00a0: [^]+vue d’abord par les 2 observateurs du secteur[^]+Même en admettant l’erreur de dénombrement/u,
    );
    expect(french.done.join('\n')).toMatch(
      /Une seule bande, dénombrée une fois\u00a0: le lien [^]+Comptés deux fois\u00a0: [^]+a importé le dénombrement\.$/u,
    );
  });

  it('and still when the count is signed off and sealed', async () => {
    const { count } = await compiler.ask<{
      count: { review: { inputHash: string; openMatters: string[] } };
    }>('query ($id: ID!) { count(id: $id) { review { inputHash openMatters } } }', { id: ID });
    expect(count.review.openMatters).toEqual([]);
    await compiler.ask(
      'mutation ($id: ID!, $hash: String!) { signOff(countId: $id, as: COMPILER, inputHash: $hash) { state } }',
      { id: ID, hash: count.review.inputHash },
    );
    await compiler.ask('mutation ($id: ID!) { seal(countId: $id) { id } }', { id: ID });
    expectSame(await fromServer(), await commandLine('--rulings', RULINGS));
  });
});

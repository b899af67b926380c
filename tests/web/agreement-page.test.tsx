import { i18n } from '@lingui/core';
import { fireEvent, screen, waitFor, within } from '@testing-library/react';
import { afterEach, describe, expect, test, vi } from 'vitest';
import {
  agreement,
  ingrid,
  measures,
  ownAnswers,
  pair,
  reviewerAnswers,
  statistic,
  tom,
  tooFew,
  withoutObservers,
} from './agreement-count.js';
// Here already, so that no test waits for it to be read.
import '../../web/src/reviews/agreement-page.js';
import { chooseLanguage } from '../../web/src/ui/language.js';
import { fakeServer, RefusalAnswer } from './fake-server.js';
import { openApp, useCleanBrowser } from './open-app.js';

const page = '/counts/c1/agreement';
const onlyLeaders = 'Observers beside those who counted the same';

/** Cells of a table row by row, without the head. */
function rowsOf(label: string): string[][] {
  const region = screen.getByRole('region', { name: label });
  return [...region.querySelectorAll('tbody tr')].map((row) =>
    [...row.querySelectorAll('th, td')].map((cell) => cell.textContent),
  );
}

describe('agreement for leaders and compilers', () => {
  useCleanBrowser();

  test('each picture has its sentence on this count, and the numbers stand in a table', async () => {
    fakeServer(reviewerAnswers('LEADER', agreement()));
    openApp(page);
    await screen.findByText(
      'Where two independent observers counted the same place, they gave the same name, one for one, to 80 % of the birds (likely between 70 % and 90 %).',
    );
    // Of three groups that either saw two have a ratio.
    screen.getByText(
      'Ingrid Vale counts 20 % more than Tom Reed on average. On a single group, expect anything from 20 % fewer to 2.40 times as many. 1 group that only one of them saw has no ratio.',
    );
    expect(rowsOf('Table: ratios of two observers')).toEqual([
      [
        'Ingrid Vale : Tom Reed',
        '1.20[1.05 to 1.40]n 12',
        '0.80[0.70 to 0.88]n 12',
        '2.40[2.00 to 3.10]n 12',
      ],
    ]);
    screen.getByText(
      'Ingrid Vale counted 10 % more, on average over the groups shared with others; nobody else clearly runs above or below.',
    );
    screen.getByText(
      /agree on most birds in North Bay \(80 %\) and on fewest in Mid Lake \(40 %\)/u,
    );
    screen.getByText(/Their intervals do not overlap/u);
    screen.getByText(
      /10 flocks seen, 8 by two or more\. There were about 10 \(10 to 13\); 1 % were/u,
    );
    screen.getByText(/No three observers counted the same 5 groups or more/u);
  });

  test('the spread is written as coefficients of variation', async () => {
    fakeServer(reviewerAnswers('LEADER', agreement()));
    openApp(page);
    // √(e^0.01 − 1) = 0.1003, √(e^0.04 − 1) = 0.2020, √(e^0.02 − 1) = 0.1421, √(e^0.09 − 1) = 0.3069.
    await screen.findByText(
      /differ by 10 % from observer to observer throughout, and by 20 % \[14 to 31 %\]/u,
    );
  });

  test('single observers are shown to leaders alone', async () => {
    fakeServer(reviewerAnswers('COMPILER', withoutObservers(agreement())));
    openApp(page);
    await screen.findByRole('heading', { name: 'Section by section' });
    expect(screen.queryByRole('heading', { name: onlyLeaders })).toBeNull();
    expect(screen.queryByRole('heading', { name: /who stands apart/u })).toBeNull();
    expect(screen.queryByText(/Only leaders see/u)).toBeNull();
  });

  test('the grid has a number and a sign in each cell; of all pairs each two names stand once', async () => {
    fakeServer(reviewerAnswers('COMPILER', withoutObservers(agreement())));
    openApp(page);
    await screen.findByText(
      'Of 40 birds that both saw, 75 % have the same name, 0 % agree at a coarser level, and 25 % were identified differently. Most often, Lesser Scaup by one was Greater Scaup by the other: 10 birds.',
    );
    // One only: half of the birds stand each way round.
    expect(rowsOf('Grid: Greater Scaup, Lesser Scaup')).toEqual([
      ['Lesser Scaup', '', '≠ 10', ''],
      ['Greater Scaup', '', '= 30', '4'],
    ]);
    fireEvent.change(screen.getByLabelText('Names given by'), { target: { value: 'o1 o2' } });
    expect(rowsOf('Grid: Greater Scaup, Lesser Scaup, Greater/Lesser Scaup')).toEqual([
      ['Lesser Scaup', '= 10', '~ 20', '≠ 10', ''],
      ['Greater/Lesser Scaup', '', '', '', ''],
      ['Greater Scaup', '', '', '= 300', ''],
      ['only by Tom Reed', '', '', '40', ''],
    ]);
  });

  test('method, source, assumptions and n of every statistic are one click away', async () => {
    const few = agreement({ overall: measures({ kappa: tooFew }) });
    fakeServer(reviewerAnswers('LEADER', few));
    openApp(page);
    const summary = await screen.findByText('Method and source: Kappa');
    const note = within(summary.closest('details') ?? document.body);
    note.getByText('Cohen 1960, Educ. Psychol. Meas. 20:37; Fleiss 1971, Psychol. Bull. 76:378.');
    note.getByText('Assumes');
    note.getByText('Too few: 3 groups, and at least 5 are needed.');
    const concordance = screen.getByText('Method and source: Lin’s concordance');
    within(concordance.closest('details') ?? document.body).getByText('From 12 groups.');
  });

  test('too little to say is said, never drawn as a number', async () => {
    const few = pair({
      ratios: { points: [], meanRatio: tooFew, lower: tooFew, upper: tooFew },
      measures: measures({ percentAgreement: tooFew }),
    });
    fakeServer(
      reviewerAnswers(
        'LEADER',
        agreement({
          overall: measures({ percentAgreement: tooFew }),
          byPair: [few],
          observerModel: null,
          observers: [{ observer: ingrid, ratio: tooFew }],
        }),
      ),
    );
    openApp(page);
    await screen.findByText(/^Too few groups were counted by two independent observers to say/u);
    screen.getByText(/both saw 0 groups: too few to say how their numbers compare/u);
    screen.getByText(
      'Too few groups were counted by two observers to say how their numbers compare.',
    );
    screen.getByText(/No taxon was compared in 5 cells/u);
    expect(rowsOf('Table: ratios of two observers')[0]?.[1]).toBe('too fewn 3');
  });

  test('where nobody shared a section, the page says what is missing', async () => {
    fakeServer(reviewerAnswers('LEADER', agreement({ byPair: [], bySection: [] })));
    openApp(page);
    await screen.findByText(/^No two independent observers counted the same section/u);
    expect(screen.queryByRole('table')).toBeNull();
  });

  test('before a window is closed the server’s refusal is shown, once', async () => {
    const refuse = () => {
      throw new RefusalAnswer('NOT_NOW', 'You may not see this now: the windows are still open.');
    };
    const answers = reviewerAnswers('LEADER', agreement(), { CountAgreement: refuse });
    const count = { ...(answers['CountHead'] as { count: object }).count, may: ['SEE_COVERAGE'] };
    fakeServer({ ...answers, CountHead: { count } });
    openApp(page);
    await waitFor(() => expect(screen.getAllByRole('alert').length).toBe(1));
    expect(screen.getByRole('alert').textContent).toContain('the windows are still open');
  });
});

describe('agreement for observers', () => {
  useCleanBrowser();

  test('only their own pairs and their own ratio', async () => {
    const server = fakeServer(
      ownAnswers({
        minimumUnits: 5,
        byPair: [pair()],
        ratios: [{ observer: ingrid, ratio: statistic(1.2, 1.05, 1.4) }],
      }),
    );
    openApp(page);
    await screen.findByText(
      'On average you counted 20 % more than the others who counted the same birds. That does not say who was right.',
    );
    screen.getByRole('link', { name: 'Agreement' });
    expect(screen.queryByRole('heading', { name: onlyLeaders })).toBeNull();
    expect(screen.queryByRole('option', { name: 'All pairs together' })).toBeNull();
    expect(server.asked.map(({ name }) => name)).not.toContain('CountAgreement');
    expect(server.asked.map(({ name }) => name)).not.toContain('SignOffStanding');
  });

  test('who shared no section is told so', async () => {
    fakeServer(ownAnswers({ minimumUnits: 5, byPair: [], ratios: [] }));
    openApp(page);
    await screen.findByText(/^Nobody else counted a section of yours/u);
  });

  test('while a window is open the server refuses', async () => {
    const refuse = () => {
      throw new RefusalAnswer('NOT_NOW', 'You may not see how you agree with others now.');
    };
    fakeServer(ownAnswers({ minimumUnits: 5, byPair: [], ratios: [] }, { OwnAgreement: refuse }));
    openApp(page);
    expect((await screen.findByRole('alert')).textContent).toContain('You may not see');
  });
});

describe('agreement in French', () => {
  useCleanBrowser();
  afterEach(() => i18n.activate('en', ['en-GB']));

  test('numbers, sentences and the names of taxa', async () => {
    await chooseLanguage('fr');
    fakeServer(reviewerAnswers('LEADER', agreement()));
    openApp(page);
    await screen.findByRole('heading', { name: 'Secteur par secteur' });
    screen.getByText(
      'En moyenne, Ingrid Vale compte 20 % de plus que le nombre compté par Tom Reed. Pour un groupe donné, tout est possible entre 20 % de moins et 2,40 fois autant. 1 groupe vu par un seul des deux n’a pas de rapport.',
    );
    const [first] = rowsOf('Tableau\u00a0: rapports de deux observateurs');
    expect(first?.[1]).toBe('1,20[1,05 à 1,40]n 12');
    fireEvent.change(screen.getByLabelText('Noms donnés par'), { target: { value: 'o1 o2' } });
    screen.getByRole('region', {
      name: 'Grille\u00a0: Fuligule milouinan, Petit Fuligule, Fuligule milouinan/Petit Fuligule',
    });
  });
});

/** What the browser offers a page to copy with; nothing on an address that is not secure. */
function setClipboard(clipboard: { readonly writeText: () => Promise<void> } | undefined): void {
  Object.defineProperty(navigator, 'clipboard', { value: clipboard, configurable: true });
}

describe('copying a table', () => {
  useCleanBrowser();
  afterEach(() => setClipboard(undefined));

  const copyButton = () =>
    screen.findByRole('button', { name: 'Copy table: ratios of two observers' });
  const copied =
    'Observers\tMean ratio\tMean ratio, low\tMean ratio, high\tMean ratio, n\t' +
    'Lower limit\tLower limit, low\tLower limit, high\tLower limit, n\t' +
    'Upper limit\tUpper limit, low\tUpper limit, high\tUpper limit, n\n' +
    `${ingrid.name} : ${tom.name}\t1.2\t1.05\t1.4\t12\t0.8\t0.7\t0.88\t12\t2.4\t2\t3.1\t12\n`;

  test('puts tab-separated text on the clipboard, and says so', async () => {
    const writeText = vi.fn(() => Promise.resolve());
    setClipboard({ writeText });
    fakeServer(reviewerAnswers('LEADER', agreement()));
    openApp(page);
    fireEvent.click(await copyButton());
    await screen.findByRole('button', { name: 'Copied: ratios of two observers' });
    expect(writeText).toHaveBeenCalledWith(copied);
    expect(screen.getByRole('status').textContent).toContain('copied');
  });

  test('where the browser does not let the page copy, the text is there to be copied by hand', async () => {
    setClipboard(undefined);
    fakeServer(reviewerAnswers('LEADER', agreement()));
    openApp(page);
    fireEvent.click(await copyButton());
    const area = await screen.findByLabelText<HTMLTextAreaElement>(/does not let the page copy/u);
    expect(area.value).toBe(copied);
    expect(document.activeElement).toBe(area);
    expect(area.selectionEnd).toBe(copied.length);
    fireEvent.keyDown(area, { key: 'Escape' });
    expect(document.activeElement).toBe(await copyButton());
    expect(screen.queryByLabelText(/does not let the page copy/u)).toBeNull();
  });
});

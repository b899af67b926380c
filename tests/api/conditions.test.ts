import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { TestApp } from '../support/start-app.js';
import { planTestCount } from '../support/test-count.js';

let app: TestApp;

beforeAll(async () => {
  app = await TestApp.start();
});

afterAll(() => app.stop());

describe('submitting a tally', () => {
  it('keeps what it was like to count, and shows it to whoever compiles', async () => {
    const count = await planTestCount(app, {
      assignments: [
        ['ola', ['s1']],
        ['pia', ['s1']],
      ],
    });
    const noted = {
      visibility: 'moderate',
      beaufort: 4,
      seaState: 3,
      iceCover: 0.2,
      glare: 'strong',
      disturbance: 'two boats at 09:10',
      optics: 'telescope 30×',
    };
    const { id } = await count.submit('ola', { conditions: noted });
    await count.submit('pia', { conditions: { beaufort: 0 } });
    const { tally } = await count.as.ola.ask<{ tally: { conditions: unknown } }>(
      `query ($id: ID!, $countId: ID) { tally(id: $id, countId: $countId) { conditions {
        visibility beaufort seaState iceCover glare disturbance optics
      } } }`,
      { id, countId: count.id },
    );
    expect(tally.conditions).toEqual(noted);
    await count.close();
    const { count: reviewed } = await count.planner.ask<{
      count: { review: { cells: { tallies: { observer: string; conditions: unknown[] }[] }[] } };
    }>(
      'query ($id: ID!) { count(id: $id) { review { cells { sections { id } tallies { observer conditions { beaufort glare } } } } } }',
      { id: count.id },
    );
    const [cell] = reviewed.review.cells;
    expect(cell?.tallies).toEqual([
      { observer: 'ola', conditions: [{ beaufort: 4, glare: 'strong' }] },
      { observer: 'pia', conditions: [{ beaufort: 0, glare: null }] },
    ]);
  });
});

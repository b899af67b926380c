import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { TestApp } from '../support/start-app.js';
import { aLine, planTestCount } from '../support/test-count.js';

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

  it('keeps the outline of what was seen, with each version, and shows it to whoever compiles', async () => {
    const count = await planTestCount(app, {
      assignments: [
        ['ola', ['s1']],
        ['pia', ['s1']],
      ],
    });
    const { count: plan } = await count.planner.ask<{
      count: { sections: { id: string; polygon: number[][][] }[] };
    }>('query ($id: ID!) { count(id: $id) { sections { id polygon } } }', { id: count.id });
    const [ring = []] = plan.sections.find(({ id }) => id === 's1')?.polygon ?? [];
    const [west = [], east = [], north = []] = ring;
    const drawn = [[west, east, north, west]];
    const seen = async (id: string) => {
      const { tally } = await count.as.ola.ask<{ tally: { seenArea: unknown; coverage: number } }>(
        'query ($id: ID!, $countId: ID) { tally(id: $id, countId: $countId) { seenArea coverage } }',
        { id, countId: count.id },
      );
      return tally;
    };
    const lines = [aLine()];
    const first = await count.submit('ola', { coverage: 0.5, seenArea: drawn, lines });
    expect(await seen(first.id)).toEqual({ coverage: 0.5, seenArea: drawn });
    // Sent again it is the same tally; another outline under its id is not.
    await count.submit('ola', { id: first.id, coverage: 0.5, seenArea: drawn, lines });
    const other = { coverage: 0.5, seenArea: [[east, north, west, east]], lines };
    await expect(count.submit('ola', { id: first.id, ...other })).rejects.toThrow(
      /already submitted under the id/u,
    );

    const second = await count.submit('ola', {
      replaces: first.id,
      reason: 'All of it was in view.',
    });
    expect(await seen(second.id)).toEqual({ coverage: 1, seenArea: null });
    expect(await seen(first.id)).toEqual({ coverage: 0.5, seenArea: drawn });

    await count.submit('pia', { coverage: 0.5, seenArea: drawn });
    await count.close();
    const { count: reviewed } = await count.planner.ask<{
      count: { review: { cells: { tallies: { observer: string; seenAreas: unknown[] }[] }[] } };
    }>(
      'query ($id: ID!) { count(id: $id) { review { cells { tallies { observer seenAreas } } } } }',
      { id: count.id },
    );
    expect(reviewed.review.cells[0]?.tallies).toEqual([
      { observer: 'ola', seenAreas: [] },
      { observer: 'pia', seenAreas: [drawn] },
    ]);
  });
});

import { cleanup, screen, within } from '@testing-library/react';
import { afterEach, describe, expect, test } from 'vitest';
import { draw } from './draw.js';
import { AllocationPart } from '../../web/src/seals/allocation-part.js';

const pair = 'Aythya affinis/marila';

/** 100 birds of the pair shared out as 60 Greater and 20 Lesser were identified; geese that cannot be. */
const allocation = [
  {
    species: 'Branta hutchinsii',
    identified: 2,
    estimated: null,
    low: 2,
    high: 36,
    interval: 'bounds',
    undetermined: 34,
    of: [{ taxon: 'Branta canadensis/hutchinsii', number: 34, estimated: null }],
  },
  {
    species: 'Aythya marila',
    identified: 60,
    estimated: 135,
    low: 110,
    high: 150,
    interval: 'bootstrap',
    undetermined: 0,
    of: [{ taxon: pair, number: 100, estimated: 75 }],
  },
  {
    species: 'Aythya affinis',
    identified: 20,
    estimated: 45,
    low: 20,
    high: 120,
    interval: 'bounds',
    undetermined: 3,
    of: [
      { taxon: pair, number: 100, estimated: 25 },
      { taxon: 'Aythya affinis/collaris', number: 3, estimated: null },
    ],
  },
];

describe('pairs and groups shared out', () => {
  afterEach(cleanup);

  test('stand in a section of their own that says that they are an estimate', () => {
    draw(<AllocationPart allocation={allocation} />);
    const section = screen.getByRole('region', { name: /^Estimate, not counted/u });
    within(section).getByText(/Nothing here is part of the compiled count/u);
  });

  test('no estimated number stands without its mark, and what was counted has none', () => {
    draw(<AllocationPart allocation={allocation} />);
    const [, greater, lesser] = screen.getAllByRole('row');
    const cells = (row: HTMLElement | undefined): readonly (string | null)[] =>
      row === undefined
        ? []
        : within(row)
            .getAllByRole('cell')
            .map(({ textContent }) => textContent.replaceAll('\u00a0', ' '));
    expect(cells(greater)).toEqual(['60', '≈ 135≈ 110–150', '', '–']);
    expect(cells(lesser)).toEqual(['20', '≈ 45≈ 20–120 *', '', '3']);
    expect(greater?.textContent).toContain('≈\u00a075 of 100 Greater/Lesser Scaup');
    screen.getByText(/^\* All that is possible/u);
  });

  test('what nothing is known of has no estimate, only what is possible', () => {
    draw(<AllocationPart allocation={allocation} />);
    const table = screen.getByRole('table');
    expect(within(table).queryByText('Cackling Goose')).toBeNull();
    screen.getByText(/No estimate, .*Cackling Goose 2 to 36\./u);
  });

  test('nothing stands there where no pair or group is compiled', () => {
    const { container } = draw(<AllocationPart allocation={[]} />);
    expect(container.textContent).toBe('');
  });
});

import { cleanup, screen, within } from '@testing-library/react';
import fc from 'fast-check';
import { afterEach, describe, expect, test } from 'vitest';
import { draw } from './draw.js';
import { PairingBalance } from '../../web/src/reviews/pairing-balance.js';
import { FLOW_KINDS, layOutPairing, type Flow } from '../../web/src/reviews/pairing-layout.js';
import { letterObservers } from '../../web/src/ui/observer-mark.js';

/** The scaup of the count worked by hand in tests/core/worked-example: o1 against o2. */
const workedExample: readonly Flow[] = [
  { kind: 'agreed', a: 'Aythya marila', b: 'Aythya marila', number: 300 },
  { kind: 'agreed', a: 'Aythya affinis', b: 'Aythya affinis', number: 10 },
  { kind: 'agreed', a: 'Aythya affinis/marila', b: 'Aythya affinis/marila', number: 60 },
  { kind: 'compatible', a: 'Aythya affinis', b: 'Aythya affinis/marila', number: 20 },
  { kind: 'differently', a: 'Aythya affinis', b: 'Aythya marila', number: 10 },
  { kind: 'only-b', a: null, b: 'Aythya marila', number: 40 },
];

function observers() {
  const letters = letterObservers([
    { id: 'o2', name: 'Second observer' },
    { id: 'o1', name: 'First observer' },
  ]);
  const [a, b] = [letters.get('o1'), letters.get('o2')];
  if (a === undefined || b === undefined) throw new Error('Both observers have letters.');
  return { a, b };
}

describe('pairing balance', () => {
  afterEach(cleanup);

  test('the sentence, and the table, say what the flows say', () => {
    const { a, b } = observers();
    expect([a.letter, b.letter]).toEqual(['A', 'B']);
    draw(<PairingBalance flows={workedExample} a={a} b={b} />);
    screen.getByText(
      'Of A’s 400 and B’s 440 birds: 370 agreed, 20 agree at a coarser level, 10 identified differently, 40 counted by B only.',
    );
    const rows = within(screen.getByRole('table')).getAllByRole('row').slice(1);
    const cells = rows.map((row) =>
      within(row)
        .getAllByRole('cell')
        .map((cell) => cell.textContent),
    );
    expect(cells).toEqual([
      ['Greater Scaup', 'Greater Scaup', 'agreed', '300'],
      ['Greater/Lesser Scaup', 'Greater/Lesser Scaup', 'agreed', '60'],
      ['Lesser Scaup', 'Lesser Scaup', 'agreed', '10'],
      ['Lesser Scaup', 'Greater/Lesser Scaup', 'agree at a coarser level', '20'],
      ['Lesser Scaup', 'Greater Scaup', 'identified differently', '10'],
      ['–', 'Greater Scaup', 'counted by B only', '40'],
    ]);
  });

  test('every kind shown has its word in the legend, and the drawing has a text', () => {
    const { a, b } = observers();
    const { container } = draw(<PairingBalance flows={workedExample} a={a} b={b} />);
    const legend = container.querySelector('.pairing-legend')?.textContent ?? '';
    for (const word of ['agreed', 'coarser level', 'differently', 'counted by B only']) {
      expect(legend).toContain(word);
    }
    expect(legend).not.toContain('counted by A only');
    expect(container.querySelector('svg[role=img]')?.getAttribute('aria-label')).toContain('table');
  });

  test('birds shared out in proportion are marked as such', () => {
    const { a, b } = observers();
    draw(
      <PairingBalance
        flows={[{ kind: 'only-b', a: null, b: 'Aythya marila', number: 567.3 }]}
        a={a}
        b={b}
      />,
    );
    screen.getByText('≈ 567.3');
    screen.getByText(/shared out among them in proportion/u);
  });

  const taxon = fc.constantFrom('Aythya marila', 'Aythya affinis', 'Anas rubripes', 'Aythya sp.');
  const flow: fc.Arbitrary<Flow> = fc
    .record({
      kind: fc.constantFrom(...FLOW_KINDS),
      a: taxon,
      b: taxon,
      number: fc.integer({ min: 1, max: 5000 }),
    })
    .map(({ kind, a, b, number }) => ({
      kind,
      a: kind === 'only-b' ? null : a,
      b: kind === 'only-a' ? null : b,
      number,
    }));

  test('both bars have one scale, nothing overlaps, and ribbons fill each piece exactly', () => {
    fc.assert(
      fc.property(fc.array(flow, { minLength: 1, maxLength: 12 }), (flows) => {
        const layout = layOutPairing(flows, 20);
        for (const side of ['a', 'b'] as const) {
          const nodes = side === 'a' ? layout.left : layout.right;
          const total = flows.reduce((sum, one) => (one[side] ? sum + one.number : sum), 0);
          expect(nodes.reduce((sum, node) => sum + node.number, 0)).toBe(total);
          nodes.forEach((node, index) => {
            const next = nodes[index + 1];
            if (next !== undefined) expect(next.top).toBeGreaterThanOrEqual(node.top + node.height);
            const ribbons = layout.ribbons.filter((ribbon) => ribbon[side] === node.taxon);
            const ends = ribbons
              .map((ribbon) => ({
                top: (side === 'a' ? ribbon.leftTop : ribbon.rightTop) ?? Number.NaN,
                height: ribbon.height,
              }))
              .sort((one, other) => one.top - other.top);
            let edge = node.top;
            for (const end of ends) {
              expect(end.top).toBeCloseTo(edge, 6);
              edge = end.top + end.height;
            }
            // A piece is never drawn thinner than a hair, so it may be higher than its ribbons.
            expect(edge).toBeLessThanOrEqual(node.top + node.height + 1e-6);
          });
        }
        const perBird = layout.ribbons.map(({ height, number }) => height / number);
        for (const scale of perBird) expect(scale).toBeCloseTo(perBird[0] ?? 0, 9);
      }),
    );
  });
});

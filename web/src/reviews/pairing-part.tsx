import { plural, t } from '@lingui/core/macro';
import { Trans } from '@lingui/react/macro';
import { useState, type ReactNode } from 'react';
import { Notice } from '../ui/notice.js';
import type { ObserverLetter } from '../ui/observer-mark.js';
import { birds, listed } from '../ui/words.js';
import type { Flow } from './pairing-layout.js';
import { PairingBalance } from './pairing-balance.js';

export interface PairingView {
  readonly a: string;
  readonly b: string;
  readonly independent: boolean;
  readonly complete: boolean;
  readonly outsideScopeA: number;
  readonly outsideScopeB: number;
  readonly flows: readonly Flow[];
}

/** The pairing balance of two observers of the cell, one pair at a time, narrowed to the group at first. */
export function PairingPart(props: {
  readonly cell: { readonly pairings: readonly PairingView[] };
  readonly groupTaxa: readonly string[] | null;
  readonly observerIds: readonly string[];
  readonly letters: ReadonlyMap<string, ObserverLetter>;
}): ReactNode {
  const { groupTaxa, letters } = props;
  const { pairings } = props.cell;
  // The pair that the disagreement is about comes first.
  const about = pairings.findIndex(
    ({ a, b }) => props.observerIds.includes(a) && props.observerIds.includes(b),
  );
  const [chosen, setChosen] = useState(Math.max(about, 0));
  const [showAll, setShowAll] = useState(groupTaxa === null);
  const pairing = pairings[chosen];
  if (pairing === undefined) return null;
  const a = letters.get(pairing.a);
  const b = letters.get(pairing.b);
  if (a === undefined || b === undefined) return null;
  const flows =
    showAll || groupTaxa === null
      ? pairing.flows
      : pairing.flows.filter(
          (flow) =>
            (flow.a && groupTaxa.includes(flow.a)) || (flow.b && groupTaxa.includes(flow.b)),
        );
  return (
    <section className="stack" aria-labelledby="pairing-heading">
      <h2 id="pairing-heading">
        <Trans>Who says what of which birds</Trans>
      </h2>
      {pairings.length < 2 ? null : (
        <div className="choice-row not-printed" role="group" aria-label={t`Two observers`}>
          {pairings.map((one, index) => (
            <button
              key={`${one.a} ${one.b}`}
              type="button"
              className="button"
              aria-pressed={index === chosen}
              onClick={() => setChosen(index)}
            >
              {listed([letters.get(one.a)?.letter ?? '', letters.get(one.b)?.letter ?? ''])}
            </button>
          ))}
        </div>
      )}
      {pairing.independent ? null : (
        <Notice kind="caution">
          <p>
            <Trans>
              These two tallies share a member, so they are compared but never used as two.
            </Trans>
          </p>
        </Notice>
      )}
      {pairing.complete ? null : (
        <p className="soft">
          <Trans>
            One of the two saw only a part, so birds that only the other has are no disagreement.
          </Trans>
        </p>
      )}
      {flows.length === 0 ? (
        <p className="soft">
          <Trans>Neither of these two has birds of this group.</Trans>
        </p>
      ) : (
        <PairingBalance flows={flows} a={a} b={b} />
      )}
      {pairing.outsideScopeA + pairing.outsideScopeB === 0 ? null : (
        <p className="soft small">{outsideSentence(pairing, a.letter, b.letter)}</p>
      )}
      {groupTaxa === null ? null : (
        <label className="choice not-printed">
          <input
            type="checkbox"
            checked={showAll}
            onChange={(event) => setShowAll(event.target.checked)}
          />
          <Trans>All taxa of this place</Trans>
        </label>
      )}
    </section>
  );
}

function outsideSentence(
  { outsideScopeA, outsideScopeB }: PairingView,
  letterA: string,
  letterB: string,
): string {
  const [numberA, numberB] = [birds(outsideScopeA), birds(outsideScopeB)];
  return plural(outsideScopeA, {
    one: `Not compared, since the other did not set out to count them: ${numberA} bird of ${letterA}, ${numberB} of ${letterB}.`,
    other: `Not compared, since the other did not set out to count them: ${numberA} birds of ${letterA}, ${numberB} of ${letterB}.`,
  });
}

import { Trans } from '@lingui/react/macro';
import type { ReactNode } from 'react';
import type { GivenRulingFragment } from '../graphql/generated/graphql.js';
import { changesGroup } from './decision-draft.js';
import { RulingItem } from './ruling-item.js';
import { sameTarget, type Target } from './ruling-target.js';

/** Every ruling on this matter, newest first; none is ever lost. */
export function RulingHistory(props: {
  readonly rulings: readonly GivenRulingFragment[];
  readonly disagreement: {
    readonly ruling?: { readonly id: string; readonly target: Target } | null | undefined;
    readonly proposals: readonly { readonly target: Target }[];
    readonly lines: readonly { readonly line: { readonly id: string } }[];
    readonly cell?: { readonly id: string } | null | undefined;
    readonly group?: { readonly taxa: readonly string[] } | null | undefined;
  };
  readonly meId: string | null;
  readonly maySecond: boolean;
  readonly mayRule: boolean;
  readonly timeZone: string;
}): ReactNode {
  const { disagreement } = props;
  const targets = [
    ...(disagreement.ruling ? [disagreement.ruling.target] : []),
    ...disagreement.proposals.map(({ target }) => target),
    ...disagreement.lines.map(({ line }) => ({ kind: 'line', line: line.id })),
  ];
  const own = props.rulings
    .filter(
      (ruling) =>
        targets.some((target) => sameTarget(target, ruling.target)) ||
        (disagreement.group && madeGroup(ruling, disagreement.cell?.id, disagreement.group.taxa)),
    )
    .sort((one, other) => (one.at < other.at ? 1 : one.at > other.at ? -1 : 0));
  if (own.length === 0) return null;
  return (
    <section className="panel stack" aria-labelledby="history-heading">
      <h2 id="history-heading">
        <Trans>Rulings so far</Trans>
      </h2>
      <ol className="plain-list stack">
        {own.map((ruling) => (
          <RulingItem
            key={ruling.id}
            ruling={ruling}
            maySecond={props.maySecond && ruling.by.id !== props.meId}
            mayWithdraw={props.mayRule}
            timeZone={props.timeZone}
          />
        ))}
      </ol>
    </section>
  );
}

/** True for a ruling that merged or split groups of this place with some of these taxa. */
function madeGroup(
  { target, decision }: GivenRulingFragment,
  cell: string | undefined,
  taxa: readonly string[],
): boolean {
  const named = [...(target.group ?? []), ...(decision.with ?? [])];
  return (
    changesGroup(decision.kind) && target.cell === cell && named.some((one) => taxa.includes(one))
  );
}

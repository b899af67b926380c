import { Trans } from '@lingui/react/macro';
import type { ReactNode } from 'react';
import type { GivenRulingFragment } from '../graphql/generated/graphql.js';
import { changesGroup } from './decision-draft.js';
import { RulingItem } from './ruling-item.js';

/**
 * Groups that rulings merged or took apart. They may leave no disagreement behind, so they are
 * listed here, where they can be seconded or taken back.
 */
export function ChangedGroups(props: {
  readonly rulings: readonly GivenRulingFragment[];
  readonly meId: string | null;
  readonly maySecond: boolean;
  readonly mayRule: boolean;
  readonly timeZone: string;
}): ReactNode {
  const changing = props.rulings
    .filter(
      ({ decision, state }) =>
        changesGroup(decision.kind) && state !== 'WITHDRAWN' && state !== 'REPLACED',
    )
    .sort((one, other) => (one.at < other.at ? 1 : one.at > other.at ? -1 : 0));
  if (changing.length === 0) return null;
  return (
    <section className="stack" aria-labelledby="changed-groups-heading">
      <h2 id="changed-groups-heading">
        <Trans>Groups merged or taken apart</Trans>
      </h2>
      <p className="soft">
        <Trans>
          What differs within the groups as they now are stands in the list above, if anything does.
        </Trans>
      </p>
      <ol className="plain-list stack">
        {changing.map((ruling) => (
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

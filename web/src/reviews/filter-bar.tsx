import { t } from '@lingui/core/macro';
import { Trans } from '@lingui/react/macro';
import type { ReactNode } from 'react';
import type { Severity } from '../graphql/generated/graphql.js';
import { severityName } from '../ui/severity.js';
import { sentenceCase } from '../ui/words.js';
import { cellWords } from './cell-words.js';
import type { Filter } from './disagreement-order.js';
import { kindName } from './kind-names.js';
import type { ListedDisagreement } from './listed-disagreement.js';

const severities: readonly (Severity | 'any')[] = ['any', 'SERIOUS', 'QUESTIONED', 'NOTE'];

/** Narrows the list; what is chosen stays visible. */
export function FilterBar(props: {
  readonly disagreements: readonly ListedDisagreement[];
  readonly filter: Filter;
  readonly onChange: (filter: Filter) => void;
}): ReactNode {
  const { disagreements, filter, onChange } = props;
  const kinds = [...new Set(disagreements.map(({ kind }) => kind))].sort();
  const cells = new Map(
    disagreements.flatMap(({ cell }) => (cell ? [[cell.id, cellWords(cell)] as const] : [])),
  );
  return (
    <div className="filter-bar not-printed" role="group" aria-label={t`Filter`}>
      <label>
        <span>
          <Trans>Severity</Trans>
        </span>
        <select
          value={filter.severity}
          onChange={(event) =>
            onChange({
              ...filter,
              severity: severities.find((one) => one === event.target.value) ?? 'any',
            })
          }
        >
          {severities.map((one) => (
            <option key={one} value={one}>
              {one === 'any' ? t({ message: 'Any', context: 'severity' }) : severityName(one)}
            </option>
          ))}
        </select>
      </label>
      <label>
        <span>
          <Trans>Kind</Trans>
        </span>
        <select
          value={filter.kind}
          onChange={(event) => onChange({ ...filter, kind: event.target.value })}
        >
          <option value="any">
            <Trans context="kind of disagreement">Any</Trans>
          </option>
          {kinds.map((kind) => (
            <option key={kind} value={kind}>
              {sentenceCase(kindName(kind))}
            </option>
          ))}
        </select>
      </label>
      <label>
        <span>
          <Trans>Where</Trans>
        </span>
        <select
          value={filter.cell}
          onChange={(event) => onChange({ ...filter, cell: event.target.value })}
        >
          <option value="any">
            <Trans>Anywhere</Trans>
          </option>
          {[...cells].map(([id, name]) => (
            <option key={id} value={id}>
              {name}
            </option>
          ))}
        </select>
      </label>
      <label className="choice">
        <input
          type="checkbox"
          checked={filter.showSettled}
          onChange={(event) => onChange({ ...filter, showSettled: event.target.checked })}
        />
        <Trans>Show settled</Trans>
      </label>
    </div>
  );
}

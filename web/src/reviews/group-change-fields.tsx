import { plural, t } from '@lingui/core/macro';
import { Trans } from '@lingui/react/macro';
import type { ReactNode } from 'react';
import { Field } from '../ui/field.js';
import { SelectField } from '../ui/select-field.js';
import { readTaxon } from '../ui/taxon.js';

import { partsOf, type DecisionDraft } from './decision-draft.js';
import {
  commonTaxa,
  mergeSentences,
  partSentence,
  splitSentences,
  type CellOfGroup,
  type ChangedGroup,
} from './group-change-words.js';

interface ChangeProps {
  readonly draft: DecisionDraft;
  readonly group: ChangedGroup;
  readonly cell: CellOfGroup;
  readonly fault: string | undefined;
  readonly set: (change: Partial<DecisionDraft>) => void;
}

/** Which other group of the place this one is settled together with, and what that does. */
export function MergeFields(props: ChangeProps): ReactNode {
  const { group, cell, draft } = props;
  const others = cell.groups.filter(({ id }) => id !== group.id);
  const chosen = others.find(({ taxa }) => taxa.join('+') === draft.with.join('+'));
  return (
    <>
      <SelectField
        label={t`Together with`}
        hint={t`another group of the same place and window`}
        fault={props.fault}
        none={t`choose`}
        options={others.map((other) => ({ value: other.id, label: groupWords(other) }))}
        value={chosen?.id ?? ''}
        onChange={(value) => props.set({ with: others.find(({ id }) => id === value)?.taxa ?? [] })}
      />
      <WhatHappens sentences={chosen === undefined ? [] : mergeSentences(group, chosen)} />
    </>
  );
}

/** `Redhead: 39 birds`. */
function groupWords({ taxa, consensus: { number } }: ChangedGroup): string {
  const names = commonTaxa(taxa);
  return t`${names}: ${plural(number, { one: '# bird', other: '# birds' })}`;
}

/** Which part each taxon of the group goes to, and what taking it apart does. */
export function SplitFields(props: ChangeProps): ReactNode {
  const { group, cell, draft } = props;
  const parts = partsOf(draft);
  const most = Math.min(group.taxa.length, Math.max(1, ...Object.values(draft.partOf)) + 1);
  return (
    <>
      <fieldset className="field">
        <legend>
          <Trans>Which part each taxon goes to</Trans>
        </legend>
        <div className="part-rows">
          {group.taxa.map((taxon) => (
            <Field key={taxon} label={readTaxon(taxon).common}>
              {(ties) => (
                <select
                  {...ties}
                  value={draft.partOf[taxon] ?? 1}
                  onChange={(event) =>
                    props.set({ partOf: { ...draft.partOf, [taxon]: Number(event.target.value) } })
                  }
                >
                  {Array.from({ length: most }, (_, index) => index + 1).map((part) => (
                    <option key={part} value={part}>
                      {t`part ${part}`}
                    </option>
                  ))}
                </select>
              )}
            </Field>
          ))}
        </div>
        {props.fault === undefined ? null : <p className="field-fault">{props.fault}</p>}
      </fieldset>
      <WhatHappens sentences={splitSentences(group, parts, cell)}>
        <ul className="part-list">
          {parts.map((part) => (
            <li key={part.join('+')}>{partSentence(part, group, cell)}.</li>
          ))}
        </ul>
      </WhatHappens>
    </>
  );
}

/** Said before the ruling is given, and read out as the choice changes. */
function WhatHappens(props: {
  readonly sentences: readonly string[];
  readonly children?: ReactNode;
}): ReactNode {
  return (
    <div role="status" className="stack-tight">
      {props.sentences.length === 0 ? null : (
        <>
          <p className="label">
            <Trans>What this ruling does</Trans>
          </p>
          {props.children}
          {props.sentences.map((sentence) => (
            <p key={sentence}>{sentence}</p>
          ))}
        </>
      )}
    </div>
  );
}

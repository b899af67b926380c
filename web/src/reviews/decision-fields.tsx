import { t } from '@lingui/core/macro';
import { Trans } from '@lingui/react/macro';
import type { ReactNode } from 'react';
import { parseTaxon } from '../../../server/core/taxa/parse-taxon.js';
import type { SourceFragment } from '../graphql/generated/graphql.js';
import { wholeNumber } from '../tallies/draft.js';
import { NumberField } from '../tallies/number-field.js';
import { submittedQuantity } from '../tallies/submitted-tally.js';
import { widerNames } from '../tallies/wider-names.js';
import { SelectField } from '../ui/select-field.js';
import { TextField } from '../ui/text-field.js';
import { readTaxon } from '../ui/taxon.js';
import { birds, sentenceCase } from '../ui/words.js';
import { isAboutLine, type DecisionDraft } from './decision-draft.js';
import { MergeFields, SplitFields } from './group-change-fields.js';
import type { CellOfGroup, ChangedGroup } from './group-change-words.js';
import { ruleName } from './rule-names.js';

export interface DecidedGroup extends ChangedGroup {
  readonly consensus: {
    readonly number: number;
    readonly byRule: readonly { readonly rule: string; readonly number: number }[];
  };
  readonly lines: readonly { readonly taxon: string; readonly number: number }[];
}

/** The fields that the chosen kind of decision uses. */
export function DecisionFields(props: {
  readonly draft: DecisionDraft;
  readonly group: DecidedGroup | null;
  readonly cell: CellOfGroup | null;
  readonly lines: readonly SourceFragment[];
  readonly faults: ReadonlyMap<string, string>;
  readonly onChange: (draft: DecisionDraft) => void;
}): ReactNode {
  const { draft, group, cell, faults } = props;
  const set = (change: Partial<DecisionDraft>): void => props.onChange({ ...draft, ...change });
  return (
    <>
      {isAboutLine(draft.kind) ? (
        <SelectField
          label={t`Tally line`}
          fault={faults.get('line')}
          none={t`choose`}
          options={props.lines.map((source) => ({
            value: source.line.id,
            label: lineWords(source),
          }))}
          value={draft.lineId}
          onChange={(value) => set({ lineId: value })}
        />
      ) : null}
      {draft.kind === 'accept-observer' && group !== null ? (
        <SelectField
          label={t`Whose lines`}
          fault={faults.get('observer')}
          none={t`choose`}
          options={group.totals.map(({ observer, observerName, number }) => ({
            value: observer,
            label: numbered(observerName, number),
          }))}
          value={draft.observer}
          onChange={(value) => set({ observer: value })}
        />
      ) : null}
      {draft.kind === 'take-rule' && group !== null ? (
        <SelectField
          label={t`Rule`}
          fault={faults.get('rule')}
          none={t`choose`}
          options={group.consensus.byRule.map(({ rule, number }) => ({
            value: rule,
            label: numbered(sentenceCase(ruleName(rule)), number),
          }))}
          value={draft.rule}
          onChange={(value) => set({ rule: value })}
        />
      ) : null}
      {draft.kind === 'identify-as' ? (
        <SelectField
          label={t`Birds that the draft has as`}
          fault={faults.get('from')}
          none={t`choose`}
          options={withChosen(group?.lines.map(({ taxon }) => taxon) ?? [], draft.from).map(
            (taxon) => ({ value: taxon, label: readTaxon(taxon).common }),
          )}
          value={draft.from}
          onChange={(value) => set({ from: value })}
        />
      ) : null}
      {draft.kind === 'identify-as' || draft.kind === 'identify-line' ? (
        <TaxonField
          label={t`Are compiled as`}
          value={draft.to}
          narrowFrom={
            draft.kind === 'identify-as'
              ? draft.from
              : (props.lines.find(({ line }) => line.id === draft.lineId)?.line.taxon ?? '')
          }
          fault={faults.get('to')}
          onChange={(to) => set({ to })}
        />
      ) : null}
      {draft.kind === 'merge-groups' && group !== null && cell !== null ? (
        <MergeFields {...{ draft, group, cell, set }} fault={faults.get('with')} />
      ) : null}
      {draft.kind === 'split-group' && group !== null && cell !== null ? (
        <SplitFields {...{ draft, group, cell, set }} fault={faults.get('parts')} />
      ) : null}
      {draft.kind === 'set-numbers' ? (
        <NumbersFields
          draft={draft}
          drafted={group?.consensus.number ?? null}
          faults={faults}
          set={set}
        />
      ) : null}
    </>
  );
}

/** `Ingrid Vale: 115`. */
function numbered(name: string, number: number): string {
  const total = birds(number);
  return t`${name}: ${total}`;
}

/** `Ingrid Vale: Greater Scaup, 115`. */
function lineWords({ line, tally }: SourceFragment): string {
  const [observer, taxon, quantity] = [tally.observer.name, line.written, submittedQuantity(line)];
  return t`${observer}: ${taxon}, ${quantity}`;
}

/** A select must be able to show what a proposal chose, even if the draft has no such line. */
function withChosen(options: readonly string[], chosen: string): readonly string[] {
  return chosen === '' || options.includes(chosen) ? options : [chosen, ...options];
}

function TaxonField(props: {
  readonly label: string;
  readonly value: string;
  /** Wider names of this one are offered as buttons. */
  readonly narrowFrom: string;
  readonly fault: string | undefined;
  readonly onChange: (value: string) => void;
}): ReactNode {
  const parsed = parseTaxon(props.narrowFrom);
  const wider = parsed.ok ? widerNames(parsed.candidates).slice(0, 3) : [];
  return (
    <div className="stack-tight">
      <TextField
        label={props.label}
        hint={t`a name, a pair with a slash, or a group`}
        fault={props.fault}
        value={props.value}
        onChange={props.onChange}
      />
      {wider.length === 0 ? null : (
        <div className="choice-row" role="group" aria-label={t`Less precise`}>
          {wider.map((one) => (
            <button
              key={one.name}
              type="button"
              className="button small"
              onClick={() => props.onChange(one.name)}
            >
              {one.common}
            </button>
          ))}
        </div>
      )}
    </div>
  );
}

function NumbersFields(props: {
  readonly draft: DecisionDraft;
  readonly drafted: number | null;
  readonly faults: ReadonlyMap<string, string>;
  readonly set: (change: Partial<DecisionDraft>) => void;
}): ReactNode {
  const { draft, faults, set } = props;
  const total = draft.numbers.reduce((sum, { number }) => sum + (wholeNumber(number) ?? 0), 0);
  const change = (index: number, part: Partial<{ taxon: string; number: string }>): void =>
    set({ numbers: draft.numbers.map((row, at) => (at === index ? { ...row, ...part } : row)) });
  return (
    <fieldset className="field">
      <legend>
        <Trans>Numbers</Trans>
      </legend>
      {draft.numbers.map((row, index) => {
        const place = index + 1;
        return (
          <div key={index} className="number-row">
            <TextField
              label={t`Taxon ${place}`}
              fault={faults.get(`taxon-${index}`)}
              value={row.taxon}
              onChange={(value) => change(index, { taxon: value })}
            />
            <NumberField
              label={t`Birds ${place}`}
              fault={faults.get(`number-${index}`)}
              value={row.number}
              onChange={(number) => change(index, { number })}
            />
            <button
              type="button"
              className="button"
              aria-label={t`Take out row ${place}`}
              onClick={() => set({ numbers: draft.numbers.filter((_, at) => at !== index) })}
            >
              ×
            </button>
          </div>
        );
      })}
      <p role="status">{togetherSentence(total, props.drafted)}</p>
      {faults.get('numbers') === undefined ? null : (
        <p className="field-fault">{faults.get('numbers')}</p>
      )}
      <div>
        <button
          type="button"
          className="button"
          onClick={() => set({ numbers: [...draft.numbers, { taxon: '', number: '' }] })}
        >
          <Trans>Add a taxon</Trans>
        </button>
      </div>
    </fieldset>
  );
}

/** The numbers added up, and how far that is from the draft. */
function togetherSentence(sum: number, drafted: number | null): string {
  const total = birds(sum);
  if (drafted === null || drafted === sum) return t`Together ${total}.`;
  const difference = birds(Math.abs(sum - drafted));
  return sum > drafted
    ? t`Together ${total}, ${difference} more than the draft.`
    : t`Together ${total}, ${difference} fewer than the draft.`;
}

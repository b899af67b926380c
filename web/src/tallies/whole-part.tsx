import { msg, t } from '@lingui/core/macro';
import { Trans } from '@lingui/react/macro';
import { memo, type ReactNode } from 'react';
import { Field } from '../ui/field.js';
import { sameFields } from '../ui/same-fields.js';
import { TextArea } from '../ui/text-field.js';
import { Choice } from './choice.js';
import { faultAt, type DraftFault } from './draft-faults.js';
import type { Draft } from './draft.js';
import { clockTimeOf } from './local-time.js';
import { ConditionsPart } from './conditions-part.js';
import type { OwnPart } from './own-part.js';
import type { Place } from './place.js';
import { SeenPart } from './later-parts.js';
import type { ChangeDraft, SetDraft } from './use-draft.js';
import { readTaxon } from '../ui/taxon.js';
import { TaxonPicker } from './taxon-picker.js';

const noTaxa: readonly string[] = [];

const scopes = [
  { value: 'all-waterbirds', label: msg`All waterbirds` },
  { value: 'waterfowl', label: msg`Waterfowl` },
  { value: 'taxa', label: msg`These taxa only` },
] as const;

interface Whole {
  readonly draft: Draft;
  readonly count: OwnPart;
  readonly personId: string;
  readonly place: Place;
  readonly expected: readonly string[];
  readonly faults: readonly DraftFault[];
  readonly change: ChangeDraft;
}

/**
 * What holds for the whole tally: when, how much of the section, what was looked for, who helped. A
 * tap on a line changes nothing of it.
 */
export const WholePart = memo(
  WholeTally,
  (before, after) =>
    sameFields(before, after, 'draft') && sameFields(before.draft, after.draft, 'lines'),
);

function WholeTally(props: Whole): ReactNode {
  const { draft, count, faults, change } = props;
  const set: SetDraft = (fields, by) => change((last) => ({ ...last, ...fields }), by);
  const fault = (field: string): string | undefined => faultAt(faults, null, field);
  return (
    <section className="stack" aria-labelledby="whole-heading">
      <h2 id="whole-heading">
        <Trans>The tally as a whole</Trans>
      </h2>
      <div className="time-fields">
        <TimeField
          label={t`Began`}
          value={draft.start}
          timeZone={count.timeZone}
          fault={fault('start')}
          onChange={(start) => set({ start }, 'start')}
        />
        <TimeField
          label={t`Ended`}
          value={draft.end}
          timeZone={count.timeZone}
          fault={fault('end')}
          onChange={(end) => set({ end }, 'end')}
        />
      </div>
      <Choice
        legend={t`How much of the section did you see?`}
        value={draft.seenAll ? 'all' : 'part'}
        options={[
          { value: 'all', label: t`All of it` },
          { value: 'part', label: t`Part of it` },
        ]}
        onChange={(seen) => set({ seenAll: seen === 'all' })}
      />
      {draft.seenAll ? null : (
        <SeenPart
          draft={draft}
          place={props.place}
          fault={fault('coverage') ?? fault('seen-area')}
          set={set}
        />
      )}
      <ConditionsPart conditions={draft.conditions} fault={fault} change={change} />
      <Choice
        legend={t`What did you set out to count?`}
        value={draft.scope}
        options={scopes}
        onChange={(scope) => set({ scope })}
      />
      <p className="hint">
        <Trans>
          What you looked for and do not list counts as none seen. What you did not look for counts
          as no answer.
        </Trans>
      </p>
      {draft.scope === 'taxa' ? (
        <ScopeTaxa draft={draft} expected={props.expected} fault={fault('scope')} set={set} />
      ) : null}
      <Party draft={draft} count={count} personId={props.personId} set={set} />
      {draft.replaces === null ? null : (
        <TextArea
          label={t`Why is the tally corrected?`}
          fault={fault('reason')}
          value={draft.reason}
          onChange={(value) => set({ reason: value }, 'reason')}
        />
      )}
    </section>
  );
}

function TimeField(props: {
  readonly label: string;
  readonly value: string;
  readonly timeZone: string;
  readonly fault: string | undefined;
  readonly onChange: (value: string) => void;
}): ReactNode {
  const field = props.label.toLowerCase();
  return (
    <Field label={props.label} fault={props.fault}>
      {(ties) => (
        <span className="time-field">
          <input
            {...ties}
            type="time"
            value={props.value}
            onChange={(event) => props.onChange(event.target.value)}
          />
          <button
            type="button"
            className="button"
            aria-label={t`Now: ${field}`}
            onClick={() => props.onChange(clockTimeOf(new Date().toISOString(), props.timeZone))}
          >
            <Trans>Now</Trans>
          </button>
        </span>
      )}
    </Field>
  );
}

function ScopeTaxa(props: {
  readonly draft: Draft;
  readonly expected: readonly string[];
  readonly fault: string | undefined;
  readonly set: SetDraft;
}): ReactNode {
  const { draft, set } = props;
  return (
    <div className="stack-tight">
      <ul className="plain-list choice-row">
        {draft.scopeTaxa.map((taxon) => (
          <li key={taxon}>
            <button
              type="button"
              className="button"
              onClick={() => set({ scopeTaxa: draft.scopeTaxa.filter((one) => one !== taxon) })}
            >
              {readTaxon(taxon).common} <span aria-hidden="true">×</span>
              <span className="for-readers">
                , <Trans>take it out</Trans>
              </span>
            </button>
          </li>
        ))}
      </ul>
      <TaxonPicker
        label={t`Add a taxon that you looked for`}
        recent={noTaxa}
        expected={props.expected}
        onPick={({ name }) =>
          set({ scopeTaxa: [...draft.scopeTaxa.filter((one) => one !== name), name] })
        }
      />
      {props.fault === undefined ? null : <p className="field-fault">{props.fault}</p>}
    </div>
  );
}

/** Two tallies that share a member are not independent, so it matters who called out numbers. */
function Party(props: {
  readonly draft: Draft;
  readonly count: OwnPart;
  readonly personId: string;
  readonly set: SetDraft;
}): ReactNode {
  const { draft, set } = props;
  const others = props.count.people.filter(({ person }) => person.id !== props.personId);
  if (others.length === 0) return null;
  return (
    <details open={draft.party.length > 0}>
      <summary>
        <Trans>Who counted with you</Trans>
      </summary>
      <fieldset className="field">
        <legend className="hint">
          <Trans>Tick everyone who found, named or called out birds for this tally.</Trans>
        </legend>
        {others.map(({ person }) => (
          <label key={person.id} className="choice">
            <input
              type="checkbox"
              checked={draft.party.includes(person.id)}
              onChange={(event) =>
                set({
                  party: event.target.checked
                    ? [...draft.party, person.id]
                    : draft.party.filter((id) => id !== person.id),
                })
              }
            />
            {person.name}
          </label>
        ))}
      </fieldset>
    </details>
  );
}

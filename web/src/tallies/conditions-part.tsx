import { msg, t } from '@lingui/core/macro';
import { Trans } from '@lingui/react/macro';
import type { ReactNode } from 'react';
import { BEAUFORT, SEA_STATES } from '../../../server/core/model/conditions.js';
import { SelectField } from '../ui/select-field.js';
import { TextField } from '../ui/text-field.js';
import { Choice } from './choice.js';
import type { DraftConditions } from './draft.js';
import { NumberField } from './number-field.js';
import type { ChangeDraft } from './use-draft.js';
import { beaufortName, seaStateName } from '../ui/condition-terms.js';
import { numberWords } from '../ui/words.js';

const visibilities = [
  { value: 'good', label: msg`Good: over 5 nautical miles (9 km)` },
  { value: 'moderate', label: msg`Moderate: 2 to 5 nautical miles (4 to 9 km)` },
  { value: 'poor', label: msg`Poor: 1 km to 2 nautical miles (4 km)` },
  { value: 'very-poor', label: msg`Very poor: under 1 km` },
];

const forces = (): readonly Option[] =>
  BEAUFORT.map(({ fromKnots, toKnots }, force) => ({
    value: String(force),
    label: `${force}: ${beaufortName(force)}, ${knots(fromKnots, toKnots)}`,
  }));

const seaStates = (): readonly Option[] =>
  SEA_STATES.map(({ toMetres }, state) => ({
    value: String(state),
    label: [`${state}: ${seaStateName(state)}`, waves(state, toMetres)]
      .filter((part) => part !== '')
      .join(', '),
  }));

interface Option {
  readonly value: string;
  readonly label: string;
}

function waves(state: number, to: number | null): string {
  if (to === 0) return '';
  const metres = numberWords(to ?? SEA_STATES[state - 1]?.toMetres ?? 0);
  return to === null ? t`waves over ${metres} m` : t`waves to ${metres} m`;
}

const glares = [
  { value: '', label: msg`Not noted` },
  { value: 'none', label: msg({ message: 'None', context: 'glare' }) },
  { value: 'some', label: msg({ message: 'Some', context: 'glare' }) },
  { value: 'strong', label: msg({ message: 'Strong', context: 'glare' }) },
] as const;

function knots(from: number, to: number | null): string {
  if (to === null) return t`${from} knots and over`;
  return to === 0 ? t`under 1 knot` : t`${from} to ${to} knots`;
}

/** Light, weather, water and glass: none of it is asked for, all of it helps whoever compiles. */
export function ConditionsPart(props: {
  readonly conditions: DraftConditions;
  readonly fault: (field: string) => string | undefined;
  readonly change: ChangeDraft;
}): ReactNode {
  const { conditions, fault, change } = props;
  const set = (noted: Partial<DraftConditions>, field?: string): void =>
    change(
      (last) => ({ ...last, conditions: { ...last.conditions, ...noted } }),
      field === undefined ? undefined : `conditions.${field}`,
    );
  const hasAny = Object.values(conditions).some((noted) => noted !== '');
  const hasFault = faultFields.some((field) => fault(field) !== undefined);
  return (
    <details open={hasAny || hasFault}>
      <summary>
        <Trans>Conditions: wind, water, light, glass</Trans>
      </summary>
      <div className="stack">
        <SelectField
          label={t`Visibility`}
          none={t`not noted`}
          options={visibilities}
          fault={fault('visibility')}
          value={conditions.visibility}
          onChange={(visibility) => set({ visibility })}
        />
        <SelectField
          label={t`Wind, Beaufort force`}
          none={t`not noted`}
          options={forces()}
          fault={fault('beaufort')}
          value={conditions.beaufort}
          onChange={(beaufort) => set({ beaufort })}
        />
        <SelectField
          label={t`State of the sea`}
          hint={t`WMO code table 3700, by the height of the waves`}
          none={t`not noted`}
          options={seaStates()}
          fault={fault('sea-state')}
          value={conditions.seaState}
          onChange={(seaState) => set({ seaState })}
        />
        <NumberField
          label={t`Ice, per cent of the section`}
          hint={t`0 for open water; empty if you did not note it`}
          fault={fault('ice-cover')}
          value={conditions.iceCover}
          onChange={(iceCover) => set({ iceCover }, 'iceCover')}
        />
        <Choice
          legend={t`Glare`}
          value={glares.find(({ value }) => value === conditions.glare)?.value ?? ''}
          options={glares}
          onChange={(glare) => set({ glare })}
        />
        <TextField
          label={t`Disturbance`}
          hint={t`boats, people, dogs, hunters, an eagle: what and when`}
          fault={fault('disturbance')}
          value={conditions.disturbance}
          onChange={(disturbance) => set({ disturbance }, 'disturbance')}
        />
        <TextField
          label={t`Optics`}
          hint={t`such as telescope 30×, binoculars 10 × 42`}
          fault={fault('optics')}
          value={conditions.optics}
          onChange={(optics) => set({ optics }, 'optics')}
        />
      </div>
    </details>
  );
}

const faultFields = [
  'visibility',
  'beaufort',
  'sea-state',
  'ice-cover',
  'glare',
  'disturbance',
  'optics',
] as const;

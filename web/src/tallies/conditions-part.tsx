import type { ReactNode } from 'react';
import { BEAUFORT, SEA_STATES } from '../../../server/core/model/conditions.js';
import { SelectField } from '../ui/select-field.js';
import { TextField } from '../ui/text-field.js';
import { Choice } from './choice.js';
import type { DraftConditions } from './draft.js';
import { NumberField } from './number-field.js';
import type { ChangeDraft } from './use-draft.js';

const visibilities = [
  { value: 'good', label: 'Good: over 5 nautical miles (9 km)' },
  { value: 'moderate', label: 'Moderate: 2 to 5 nautical miles (4 to 9 km)' },
  { value: 'poor', label: 'Poor: 1 km to 2 nautical miles (4 km)' },
  { value: 'very-poor', label: 'Very poor: under 1 km' },
];

const forces = BEAUFORT.map(({ name, fromKnots, toKnots }, force) => ({
  value: String(force),
  label: `${force}: ${name}, ${knots(fromKnots, toKnots)}`,
}));

const seaStates = SEA_STATES.map(({ name, toMetres }, state) => ({
  value: String(state),
  label:
    toMetres === null
      ? `${state}: ${name}, waves over ${SEA_STATES[state - 1]?.toMetres ?? 0} m`
      : `${state}: ${name}${toMetres === 0 ? '' : `, waves to ${toMetres} m`}`,
}));

const glares = [
  { value: '', label: 'Not noted' },
  { value: 'none', label: 'None' },
  { value: 'some', label: 'Some' },
  { value: 'strong', label: 'Strong' },
] as const;

function knots(from: number, to: number | null): string {
  if (to === null) return `${from} knots and over`;
  return to === 0 ? 'under 1 knot' : `${from} to ${to} knots`;
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
      <summary>Conditions: wind, water, light, glass</summary>
      <div className="stack">
        <SelectField
          label="Visibility"
          none="not noted"
          options={visibilities}
          fault={fault('visibility')}
          value={conditions.visibility}
          onChange={(visibility) => set({ visibility })}
        />
        <SelectField
          label="Wind, Beaufort force"
          none="not noted"
          options={forces}
          fault={fault('beaufort')}
          value={conditions.beaufort}
          onChange={(beaufort) => set({ beaufort })}
        />
        <SelectField
          label="State of the sea"
          hint="WMO code table 3700, by the height of the waves"
          none="not noted"
          options={seaStates}
          fault={fault('sea-state')}
          value={conditions.seaState}
          onChange={(seaState) => set({ seaState })}
        />
        <NumberField
          label="Ice, per cent of the section"
          hint="0 for open water; empty if you did not note it"
          fault={fault('ice-cover')}
          value={conditions.iceCover}
          onChange={(iceCover) => set({ iceCover }, 'iceCover')}
        />
        <Choice
          legend="Glare"
          value={glares.find(({ value }) => value === conditions.glare)?.value ?? ''}
          options={glares}
          onChange={(glare) => set({ glare })}
        />
        <TextField
          label="Disturbance"
          hint="boats, people, dogs, hunters, an eagle: what and when"
          fault={fault('disturbance')}
          value={conditions.disturbance}
          onChange={(disturbance) => set({ disturbance }, 'disturbance')}
        />
        <TextField
          label="Optics"
          hint="such as telescope 30×, binoculars 10 × 42"
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

import { t } from '@lingui/core/macro';
import { Trans } from '@lingui/react/macro';
import type { ReactNode } from 'react';
import { v7 } from 'uuid';
import type { Role } from '../graphql/generated/graphql.js';
import { roleName } from '../ui/role-names.js';
import { TextField } from '../ui/text-field.js';
import { sentenceCase } from '../ui/words.js';

export interface PlannedPerson {
  readonly key: string;
  readonly name: string;
  readonly roles: readonly Role[];
}

const roles: readonly Role[] = ['OBSERVER', 'COMPILER', 'LEADER'];

/** Who takes part; whoever plans the count leads it in any case. */
export function PlannedPeople(props: {
  readonly people: readonly PlannedPerson[];
  readonly onChange: (people: readonly PlannedPerson[]) => void;
}): ReactNode {
  const { people, onChange } = props;
  const change = (key: string, part: Partial<PlannedPerson>): void =>
    onChange(people.map((person) => (person.key === key ? { ...person, ...part } : person)));
  return (
    <fieldset className="field">
      <legend>
        <Trans>People</Trans>
      </legend>
      <span className="hint">
        <Trans>You lead the count; add everyone else. Each gets an invite link later.</Trans>
      </span>
      {people.map((person, index) => {
        const place = index + 1;
        return (
          <div key={person.key} className="planned-person">
            <TextField
              label={t`Name ${place}`}
              value={person.name}
              onChange={(value) => change(person.key, { name: value })}
            />
            <div className="row" role="group" aria-label={t`Roles of person ${place}`}>
              {roles.map((role) => (
                <label key={role} className="choice">
                  <input
                    type="checkbox"
                    checked={person.roles.includes(role)}
                    onChange={(event) =>
                      change(person.key, {
                        roles: event.target.checked
                          ? [...person.roles, role]
                          : person.roles.filter((one) => one !== role),
                      })
                    }
                  />
                  {sentenceCase(roleName(role))}
                </label>
              ))}
            </div>
          </div>
        );
      })}
      <div>
        <button
          type="button"
          className="button"
          onClick={() => onChange([...people, { key: v7(), name: '', roles: ['OBSERVER'] }])}
        >
          <Trans>Add a person</Trans>
        </button>
      </div>
    </fieldset>
  );
}

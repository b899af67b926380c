import type { ReactNode } from 'react';
import { v7 } from 'uuid';
import type { Role } from '../graphql/generated/graphql.js';
import { TextField } from '../ui/text-field.js';
import { inWords, sentenceCase } from '../ui/words.js';

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
      <legend>People</legend>
      <span className="hint">
        You lead the count; add everyone else. Each gets an invite link later.
      </span>
      {people.map((person, index) => (
        <div key={person.key} className="planned-person">
          <TextField
            label={`Name ${index + 1}`}
            value={person.name}
            onChange={(value) => change(person.key, { name: value })}
          />
          <div className="row" role="group" aria-label={`Roles of person ${index + 1}`}>
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
                {sentenceCase(inWords(role))}
              </label>
            ))}
          </div>
        </div>
      ))}
      <div>
        <button
          type="button"
          className="button"
          onClick={() => onChange([...people, { key: v7(), name: '', roles: ['OBSERVER'] }])}
        >
          Add a person
        </button>
      </div>
    </fieldset>
  );
}

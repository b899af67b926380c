import { t } from '@lingui/core/macro';
import { Trans } from '@lingui/react/macro';
import { useState, type ReactNode } from 'react';
import { useMutation } from 'urql';
import { v7 } from 'uuid';
import type { CountCoverageQuery } from '../graphql/generated/graphql.js';
import { readTrouble, type Trouble } from '../graphql/trouble.js';
import { useAnnounce } from '../ui/announcer.js';
import { ActForm } from '../ui/act-form.js';
import { SelectField } from '../ui/select-field.js';
import { TroubleNotice } from '../ui/notice.js';
import { listed, span } from '../ui/words.js';
import { FieldSheetLinks } from './field-sheet-links.js';
import { Assign, Unassign } from './documents.js';

type Count = CountCoverageQuery['count'];

/** Who counts what: the list, and a form for one more. */
export function Assignments(props: {
  readonly count: Count;
  readonly timeZone: string;
  readonly again: () => void;
}): ReactNode {
  const { count, timeZone } = props;
  const [trouble, setTrouble] = useState<Trouble | null>(null);
  const [, unassign] = useMutation(Unassign);
  const announce = useAnnounce();
  const mayPlan = count.may.includes('PLAN');
  const isLeader = count.myRoles.includes('LEADER');

  async function takeBack(assignmentId: string): Promise<void> {
    setTrouble(null);
    const answer = await unassign(
      { assignmentId },
      { additionalTypenames: ['Assignment', 'Count'] },
    );
    if (answer.error) setTrouble(readTrouble(answer.error));
    else {
      announce(t`The assignment was taken back.`);
      props.again();
    }
  }

  return (
    <section className="stack" aria-labelledby="assignments-heading">
      <h2 id="assignments-heading">
        <Trans>Assignments</Trans>
      </h2>
      {trouble === null ? null : <TroubleNotice trouble={trouble} />}
      {count.assignments.length === 0 ? (
        <p className="soft">
          <Trans>
            Nobody is assigned yet. Begin with the sections that matter most, two people each.
          </Trans>
        </p>
      ) : (
        <div className="wide" role="region" aria-label={t`Table of assignments`} tabIndex={0}>
          <table>
            <thead>
              <tr>
                <th scope="col">
                  <Trans>Observer</Trans>
                </th>
                <th scope="col">
                  <Trans>Sections</Trans>
                </th>
                <th scope="col">
                  <Trans>Window</Trans>
                </th>
                <th scope="col">
                  <Trans context="vantage point">From</Trans>
                </th>
                <th scope="col">
                  <Trans>Tally</Trans>
                </th>
                {isLeader ? (
                  <th scope="col">
                    <Trans>Field sheet</Trans>
                  </th>
                ) : null}
                {mayPlan ? (
                  <th scope="col">
                    <span className="for-readers">
                      <Trans>Take back</Trans>
                    </span>
                  </th>
                ) : null}
              </tr>
            </thead>
            <tbody>
              {count.assignments.map((assignment) => {
                const window = count.windows.find(({ id }) => id === assignment.window.id);
                const { name } = assignment.person;
                return (
                  <tr key={assignment.id}>
                    <td>{name}</td>
                    <td>{listed(assignment.sections.map(({ name }) => name))}</td>
                    <td>{window === undefined ? '' : span(window.start, window.end, timeZone)}</td>
                    <td>{assignment.vantage?.name ?? t`free to choose`}</td>
                    <td>{assignment.submitted ? t`● in` : t`○ not yet`}</td>
                    {isLeader ? (
                      <td>
                        <FieldSheetLinks assignmentId={assignment.id} of={name} />
                      </td>
                    ) : null}
                    {mayPlan ? (
                      <td>
                        {assignment.submitted ? null : (
                          <button
                            type="button"
                            className="button"
                            data-kind="quiet"
                            aria-label={t`Take back the assignment of ${name}`}
                            onClick={() => void takeBack(assignment.id)}
                          >
                            <Trans>Take back</Trans>
                          </button>
                        )}
                      </td>
                    ) : null}
                  </tr>
                );
              })}
            </tbody>
          </table>
        </div>
      )}
      {mayPlan ? <AssignForm count={count} timeZone={timeZone} again={props.again} /> : null}
    </section>
  );
}

function AssignForm(props: {
  readonly count: Count;
  readonly timeZone: string;
  readonly again: () => void;
}): ReactNode {
  const { count, timeZone } = props;
  const [personId, setPersonId] = useState('');
  const [sectionIds, setSectionIds] = useState<readonly string[]>([]);
  const [windowId, setWindowId] = useState(count.windows[0]?.id ?? '');
  const [vantageId, setVantageId] = useState('');
  const [trouble, setTrouble] = useState<Trouble | null>(null);
  const [{ fetching }, assign] = useMutation(Assign);
  const announce = useAnnounce();

  async function submit(): Promise<void> {
    setTrouble(null);
    const answer = await assign(
      {
        input: {
          id: v7(),
          countId: count.id,
          personId,
          sectionIds: [...sectionIds],
          windowId,
          vantageId: vantageId === '' ? null : vantageId,
        },
      },
      { additionalTypenames: ['Assignment', 'Count'] },
    );
    if (answer.error) setTrouble(readTrouble(answer.error));
    else {
      setSectionIds([]);
      announce(t`Assigned.`);
      props.again();
    }
  }

  return (
    <details>
      <summary>
        <Trans>Assign somebody</Trans>
      </summary>
      <ActForm trouble={trouble} act={submit}>
        <div className="two-fields">
          <SelectField
            label={t`Observer`}
            none={t`choose`}
            options={count.people.map(({ person }) => ({ value: person.id, label: person.name }))}
            required
            value={personId}
            onChange={setPersonId}
          />
          <SelectField
            label={t`Window`}
            options={count.windows.map((window) => ({
              value: window.id,
              label: span(window.start, window.end, timeZone),
            }))}
            required
            value={windowId}
            onChange={setWindowId}
          />
          <SelectField
            label={t`Vantage point`}
            none={t`free to choose`}
            options={count.vantages.map((vantage) => ({ value: vantage.id, label: vantage.name }))}
            value={vantageId}
            onChange={setVantageId}
          />
        </div>
        <fieldset className="field">
          <legend>
            <Trans>Sections</Trans>
          </legend>
          <div className="choice-row">
            {count.sections.map((section) => (
              <label key={section.id} className="choice-button">
                <input
                  type="checkbox"
                  checked={sectionIds.includes(section.id)}
                  onChange={(event) =>
                    setSectionIds(
                      event.target.checked
                        ? [...sectionIds, section.id]
                        : sectionIds.filter((id) => id !== section.id),
                    )
                  }
                />
                <span>{section.name}</span>
              </label>
            ))}
          </div>
        </fieldset>
        <div>
          <button
            type="submit"
            className="button"
            data-kind="main"
            disabled={fetching || personId === '' || sectionIds.length === 0}
          >
            <Trans>Assign</Trans>
          </button>
        </div>
      </ActForm>
    </details>
  );
}

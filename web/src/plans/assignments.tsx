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
      announce('The assignment was taken back.');
      props.again();
    }
  }

  return (
    <section className="stack" aria-labelledby="assignments-heading">
      <h2 id="assignments-heading">Assignments</h2>
      {trouble === null ? null : <TroubleNotice trouble={trouble} />}
      {count.assignments.length === 0 ? (
        <p className="soft">
          Nobody is assigned yet. Begin with the sections that matter most, two people each.
        </p>
      ) : (
        <div className="wide" role="region" aria-label="Table of assignments" tabIndex={0}>
          <table>
            <thead>
              <tr>
                <th scope="col">Observer</th>
                <th scope="col">Sections</th>
                <th scope="col">Window</th>
                <th scope="col">From</th>
                <th scope="col">Tally</th>
                {isLeader ? <th scope="col">Field sheet</th> : null}
                {mayPlan ? (
                  <th scope="col">
                    <span className="for-readers">Take back</span>
                  </th>
                ) : null}
              </tr>
            </thead>
            <tbody>
              {count.assignments.map((assignment) => {
                const window = count.windows.find(({ id }) => id === assignment.window.id);
                return (
                  <tr key={assignment.id}>
                    <td>{assignment.person.name}</td>
                    <td>{listed(assignment.sections.map(({ name }) => name))}</td>
                    <td>{window === undefined ? '' : span(window.start, window.end, timeZone)}</td>
                    <td>{assignment.vantage?.name ?? 'free to choose'}</td>
                    <td>{assignment.submitted ? '● in' : '○ not yet'}</td>
                    {isLeader ? (
                      <td>
                        <FieldSheetLinks assignmentId={assignment.id} of={assignment.person.name} />
                      </td>
                    ) : null}
                    {mayPlan ? (
                      <td>
                        {assignment.submitted ? null : (
                          <button
                            type="button"
                            className="button"
                            data-kind="quiet"
                            aria-label={`Take back the assignment of ${assignment.person.name}`}
                            onClick={() => void takeBack(assignment.id)}
                          >
                            Take back
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
      announce('Assigned.');
      props.again();
    }
  }

  return (
    <details>
      <summary>Assign somebody</summary>
      <ActForm trouble={trouble} act={submit}>
        <div className="two-fields">
          <SelectField
            label="Observer"
            none="choose"
            options={count.people.map(({ person }) => ({ value: person.id, label: person.name }))}
            required
            value={personId}
            onChange={setPersonId}
          />
          <SelectField
            label="Window"
            options={count.windows.map((window) => ({
              value: window.id,
              label: span(window.start, window.end, timeZone),
            }))}
            required
            value={windowId}
            onChange={setWindowId}
          />
          <SelectField
            label="Vantage point"
            none="free to choose"
            options={count.vantages.map((vantage) => ({ value: vantage.id, label: vantage.name }))}
            value={vantageId}
            onChange={setVantageId}
          />
        </div>
        <fieldset className="field">
          <legend>Sections</legend>
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
            Assign
          </button>
        </div>
      </ActForm>
    </details>
  );
}

import { t } from '@lingui/core/macro';
import { Trans } from '@lingui/react/macro';
import type { ReactNode } from 'react';
import type { CountCoverageQuery } from '../graphql/generated/graphql.js';
import { span } from '../ui/words.js';
import { peopleThere, type PersonThere } from './coverage-people.js';
import { independenceWords, type CoverageEntry } from './coverage-words.js';

type Count = CountCoverageQuery['count'];

const marks: Readonly<Record<PersonThere['state'], string>> = { in: '●', part: '◐', expected: '○' };

/** Every section in every window: who counts it from where, and whose tally is in. */
export function CoverageMatrix(props: {
  readonly count: Count;
  readonly entryFor: (sectionId: string, windowId: string) => CoverageEntry | undefined;
  readonly timeZone: string;
}): ReactNode {
  const { count, entryFor, timeZone } = props;
  return (
    <div className="wide" role="region" aria-label={t`Coverage by section and window`} tabIndex={0}>
      <table className="coverage-matrix">
        <caption>
          <span aria-hidden="true">
            <Trans>● in · ◐ in, part of the section · ○ not in yet</Trans>
          </span>
        </caption>
        <thead>
          <tr>
            <th scope="col">
              <Trans>Section</Trans>
            </th>
            {count.windows.map(({ id, start, end, closed }) => {
              const window = span(start, end, timeZone);
              return (
                <th key={id} scope="col">
                  {closed ? t`${window} (closed)` : window}
                </th>
              );
            })}
          </tr>
        </thead>
        <tbody>
          {count.sections.map((section) => (
            <tr key={section.id}>
              <th scope="row">{section.name}</th>
              {count.windows.map((window) => (
                <td key={window.id}>
                  <CoverageCell
                    entry={entryFor(section.id, window.id)}
                    count={count}
                    timeZone={timeZone}
                  />
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

function CoverageCell(props: {
  readonly entry: CoverageEntry | undefined;
  readonly count: Count;
  readonly timeZone: string;
}): ReactNode {
  const { entry } = props;
  const people =
    entry === undefined ? [] : peopleThere(entry, props.count.assignments, props.timeZone);
  if (people.length === 0)
    return (
      <strong>
        <Trans>nobody assigned</Trans>
      </strong>
    );
  return (
    <div className="stack-tight">
      <ul className="plain-list">
        {people.map(({ id, name, state, words }) => (
          <li key={id} className="coverage-person">
            <span aria-hidden="true">{marks[state]}</span>
            <span>
              {name}
              <span className="small soft">, {words}</span>
            </span>
          </li>
        ))}
      </ul>
      <span className="small soft">{independenceWords(entry)}</span>
    </div>
  );
}

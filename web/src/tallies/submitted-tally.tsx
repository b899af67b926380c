import type { ReactNode } from 'react';
import type { OwnTallyFragment } from '../graphql/generated/graphql.js';
import { conditionsWords } from '../ui/conditions-words.js';
import { birds, clock, inWords, percent, sentenceCase } from '../ui/words.js';
import { readTaxon } from '../ui/taxon.js';

type Line = OwnTallyFragment['lines'][number];

/** A tally as it was sent. */
export function SubmittedTally(props: {
  readonly tally: OwnTallyFragment;
  readonly timeZone: string;
}): ReactNode {
  const { tally, timeZone } = props;
  return (
    <div className="stack">
      <dl className="facts">
        <dt>Counted</dt>
        <dd>
          {tally.start && tally.end
            ? `${clock(tally.start, timeZone)} to ${clock(tally.end, timeZone)}`
            : 'time not stated'}
        </dd>
        <dt>Saw</dt>
        <dd>
          {tally.coverage >= 1
            ? 'all of the section'
            : `about ${percent(tally.coverage)} of the section`}
        </dd>
        <dt>Looked for</dt>
        <dd>{inWords(tally.scope)}</dd>
        {tally.reason === null ? null : (
          <>
            <dt>Corrected</dt>
            <dd>{tally.reason}</dd>
          </>
        )}
        {tally.conditions === null ? null : (
          <>
            <dt>Conditions</dt>
            <dd>{sentenceCase(conditionsWords(tally.conditions))}</dd>
          </>
        )}
      </dl>
      <table>
        <caption className="for-readers">Lines as submitted</caption>
        <thead>
          <tr>
            <th scope="col">Taxon</th>
            <th scope="col">How</th>
            <th scope="col" className="number">
              Birds
            </th>
          </tr>
        </thead>
        <tbody>
          {tally.lines.map((line) => (
            <tr key={line.id}>
              <td>{readTaxon(line.written).common}</td>
              <td className="small soft">
                {inWords(line.method)}
                {line.activity === 'water' ? '' : `, ${inWords(line.activity)}`}
              </td>
              <td className="number">{submittedQuantity(line)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

/** The number of a submitted line: `12`, `40–60`, `50 (40–60)` or `present`. */
export function submittedQuantity(line: Pick<Line, 'number' | 'low' | 'high' | 'present'>): string {
  if (line.present) return 'present';
  const { number } = line;
  const range =
    line.low === null || line.high === null ? null : `${birds(line.low)}–${birds(line.high)}`;
  if (number === null) return range ?? 'present';
  return range === null ? birds(number) : `${birds(number)} (${range})`;
}

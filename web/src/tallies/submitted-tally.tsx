import { t } from '@lingui/core/macro';
import { Trans } from '@lingui/react/macro';
import type { ReactNode } from 'react';
import type { OwnTallyFragment } from '../graphql/generated/graphql.js';
import { conditionsWords } from '../ui/conditions-words.js';
import { birds, percent, sentenceCase, span } from '../ui/words.js';
import { readTaxon } from '../ui/taxon.js';
import { activityWords, methodWords, scopeWords } from './line-words.js';

type Line = OwnTallyFragment['lines'][number];

/** A tally as it was sent. */
export function SubmittedTally(props: {
  readonly tally: OwnTallyFragment;
  readonly timeZone: string;
}): ReactNode {
  const { tally, timeZone } = props;
  const share = percent(tally.coverage);
  return (
    <div className="stack">
      <dl className="facts">
        <dt>
          <Trans>Counted</Trans>
        </dt>
        <dd>
          {tally.start && tally.end ? span(tally.start, tally.end, timeZone) : t`time not stated`}
        </dd>
        <dt>
          <Trans>Saw</Trans>
        </dt>
        <dd>{tally.coverage >= 1 ? t`all of the section` : t`about ${share} of the section`}</dd>
        <dt>
          <Trans>Looked for</Trans>
        </dt>
        <dd>{scopeWords(tally.scope)}</dd>
        {tally.reason === null ? null : (
          <>
            <dt>
              <Trans>Corrected</Trans>
            </dt>
            <dd>{tally.reason}</dd>
          </>
        )}
        {tally.conditions === null ? null : (
          <>
            <dt>
              <Trans>Conditions</Trans>
            </dt>
            <dd>{sentenceCase(conditionsWords(tally.conditions))}</dd>
          </>
        )}
      </dl>
      <table>
        <caption className="for-readers">
          <Trans>Lines as submitted</Trans>
        </caption>
        <thead>
          <tr>
            <th scope="col">
              <Trans>Taxon</Trans>
            </th>
            <th scope="col">
              <Trans>How</Trans>
            </th>
            <th scope="col" className="number">
              <Trans>Birds</Trans>
            </th>
          </tr>
        </thead>
        <tbody>
          {tally.lines.map((line) => (
            <tr key={line.id}>
              <td>{readTaxon(line.written).common}</td>
              <td className="small soft">
                {methodWords(line.method)}
                {line.activity === 'water' ? '' : `, ${activityWords(line.activity)}`}
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

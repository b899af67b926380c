import { t } from '@lingui/core/macro';
import { Plural, Trans } from '@lingui/react/macro';
import type { ReactNode } from 'react';
import type { SourceFragment } from '../graphql/generated/graphql.js';
import { activityWords, methodWords } from '../tallies/line-words.js';
import { submittedQuantity } from '../tallies/submitted-tally.js';
import { ObserverMark, type ObserverLetter } from '../ui/observer-mark.js';
import { clock, listed } from '../ui/words.js';

/** The tally lines that something stands on, as their observers wrote them. */
export function SourceLines(props: {
  readonly lines: readonly SourceFragment[];
  readonly letters: ReadonlyMap<string, ObserverLetter>;
  readonly timeZone: string;
  readonly open?: boolean;
}): ReactNode {
  const all = props.lines.length;
  if (all === 0) return null;
  return (
    <details open={props.open ?? false}>
      <summary>
        <Plural value={all} one="# tally line as written" other="# tally lines as written" />
      </summary>
      <div className="wide" role="region" aria-label={t`Tally lines as written`} tabIndex={0}>
        <table>
          <thead>
            <tr>
              <th scope="col">
                <Trans>Observer</Trans>
              </th>
              <th scope="col">
                <Trans>Written</Trans>
              </th>
              <th scope="col" className="number">
                <Trans>Birds</Trans>
              </th>
              <th scope="col">
                <Trans>How</Trans>
              </th>
              <th scope="col">
                <Trans>Where</Trans>
              </th>
              <th scope="col">
                <Trans>Time</Trans>
              </th>
              <th scope="col">
                <Trans context="of an observer">Note</Trans>
              </th>
            </tr>
          </thead>
          <tbody>
            {props.lines.map(({ line, tally }) => {
              const letter = props.letters.get(tally.observer.id);
              const { version } = tally;
              return (
                <tr key={line.id}>
                  <td>
                    {letter === undefined ? null : <ObserverMark observer={letter} />}{' '}
                    {tally.observer.name}
                    {version > 1 ? (
                      <span className="soft small">
                        {' '}
                        <Trans>version {version}</Trans>
                      </span>
                    ) : null}
                  </td>
                  <td>{line.written}</td>
                  <td className="number">{submittedQuantity(line)}</td>
                  <td className="small">{howWords(line)}</td>
                  <td className="small">{listed(tally.sections.map(({ name }) => name))}</td>
                  <td className="small">{timeWords(line.time ?? null, tally, props.timeZone)}</td>
                  <td className="small">{line.note ?? ''}</td>
                </tr>
              );
            })}
          </tbody>
        </table>
      </div>
    </details>
  );
}

function howWords(line: SourceFragment['line']): string {
  const { block, flock } = line;
  return [
    ...(line.totalMethod === null ? [] : [t`sample of a raft`]),
    block ? t`blocks of ${block}` : methodWords(line.totalMethod ?? line.method),
    ...(line.activity === 'water' ? [] : [activityWords(line.activity)]),
    ...(flock ? [t`flock ${flock}`] : []),
    ...(line.certainty === 'likely' ? [t({ message: 'likely', context: 'certainty' })] : []),
  ].join(', ');
}

function timeWords(time: string | null, tally: SourceFragment['tally'], timeZone: string): string {
  if (time !== null) return clock(time, timeZone);
  return tally.start && tally.end
    ? `${clock(tally.start, timeZone)}–${clock(tally.end, timeZone)}`
    : '';
}

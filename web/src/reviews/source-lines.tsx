import type { ReactNode } from 'react';
import type { SourceFragment } from '../graphql/generated/graphql.js';
import { submittedQuantity } from '../tallies/submitted-tally.js';
import { ObserverMark, type ObserverLetter } from '../ui/observer-mark.js';
import { clock, countOf, inWords, listed } from '../ui/words.js';

/** The tally lines that something stands on, as their observers wrote them. */
export function SourceLines(props: {
  readonly lines: readonly SourceFragment[];
  readonly letters: ReadonlyMap<string, ObserverLetter>;
  readonly timeZone: string;
  readonly open?: boolean;
}): ReactNode {
  if (props.lines.length === 0) return null;
  return (
    <details open={props.open ?? false}>
      <summary>{countOf(props.lines.length, 'tally line')} as written</summary>
      <div className="wide" role="region" aria-label="Tally lines as written" tabIndex={0}>
        <table>
          <thead>
            <tr>
              <th scope="col">Observer</th>
              <th scope="col">Written</th>
              <th scope="col" className="number">
                Birds
              </th>
              <th scope="col">How</th>
              <th scope="col">Where</th>
              <th scope="col">Time</th>
              <th scope="col">Note</th>
            </tr>
          </thead>
          <tbody>
            {props.lines.map(({ line, tally }) => {
              const letter = props.letters.get(tally.observer.id);
              return (
                <tr key={line.id}>
                  <td>
                    {letter === undefined ? null : <ObserverMark observer={letter} />}{' '}
                    {tally.observer.name}
                    {tally.version > 1 ? (
                      <span className="soft small"> version {tally.version}</span>
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
  return [
    ...(line.totalMethod === null ? [] : ['sample of a raft']),
    line.block ? `blocks of ${line.block}` : inWords(line.totalMethod ?? line.method),
    ...(line.activity === 'water' ? [] : [inWords(line.activity)]),
    ...(line.flock ? [`flock ${line.flock}`] : []),
    ...(line.certainty === 'likely' ? ['likely'] : []),
  ].join(', ');
}

function timeWords(time: string | null, tally: SourceFragment['tally'], timeZone: string): string {
  if (time !== null) return clock(time, timeZone);
  return tally.start && tally.end
    ? `${clock(tally.start, timeZone)}–${clock(tally.end, timeZone)}`
    : '';
}

import { useRef, type ReactNode } from 'react';
import { Link } from 'wouter';
import { kindWords } from '../../../server/core/disagreements/kind-words.js';
import { pathOf } from '../ui/path.js';
import { SeverityMark } from '../ui/severity.js';
import { useShortKeys, useShortKeysSetting } from '../ui/short-keys.js';
import { birds, countOf } from '../ui/words.js';
import { cellWords } from './cell-words.js';
import { isForRuling, isSettled } from './disagreement-order.js';
import type { ListedDisagreement } from './listed-disagreement.js';

/** The list of work; `j` and `k` go through it, Enter opens. */
export function WorkList(props: {
  readonly countId: string;
  readonly disagreements: readonly ListedDisagreement[];
}): ReactNode {
  const [keysSetting, setKeysSetting] = useShortKeysSetting();
  const rows = useRef<HTMLTableSectionElement>(null);

  function step(by: 1 | -1): void {
    const links = [...(rows.current?.querySelectorAll<HTMLAnchorElement>('a') ?? [])];
    const at = links.findIndex((link) => link === document.activeElement);
    links[at === -1 ? 0 : Math.min(Math.max(at + by, 0), links.length - 1)]?.focus();
  }
  useShortKeys(keysSetting === 'on', { j: () => step(1), k: () => step(-1) });

  return (
    <>
      <table className="work-list">
        <caption className="for-readers">
          Disagreements, {countOf(props.disagreements.length, 'row')}
        </caption>
        <thead>
          <tr>
            <th scope="col" className="number">
              Birds
            </th>
            <th scope="col">Severity</th>
            <th scope="col">What happened</th>
            <th scope="col">Where</th>
            <th scope="col">Ruling</th>
          </tr>
        </thead>
        <tbody ref={rows}>
          {props.disagreements.map((one) => (
            <Row key={one.id} countId={props.countId} disagreement={one} />
          ))}
        </tbody>
      </table>
      <p className="soft small row not-printed keys-hint">
        <span>
          <kbd>j</kbd> next, <kbd>k</kbd> previous, <kbd>Enter</kbd> opens.
        </span>
        <label className="row">
          <input
            type="checkbox"
            checked={keysSetting === 'on'}
            onChange={(event) => setKeysSetting(event.target.checked ? 'on' : 'off')}
          />
          Single-key shortcuts
        </label>
      </p>
    </>
  );
}

function Row(props: {
  readonly countId: string;
  readonly disagreement: ListedDisagreement;
}): ReactNode {
  const { disagreement } = props;
  const unanswered = disagreement.queries.filter(({ answer }) => !answer).length;
  const answered = disagreement.queries.length - unanswered;
  return (
    <tr data-settled={isSettled(disagreement)}>
      <td className="number" data-name="Birds">
        {birds(disagreement.birds)}
      </td>
      <td>
        <SeverityMark severity={disagreement.severity} />
      </td>
      <td className="work-list-text">
        <Link href={pathOf('counts', props.countId, 'disagreements', disagreement.id)}>
          {disagreement.text}
        </Link>
        <span className="soft small"> {kindWords(disagreement.kind)}</span>
      </td>
      <td className="small">
        {disagreement.cell ? cellWords(disagreement.cell) : 'several sections'}
      </td>
      <td className="small">
        {rulingWords(disagreement)}
        {answered > 0 ? <span className="block">{countOf(answered, 'answer')} in</span> : null}
        {unanswered > 0 ? (
          <span className="block soft">{countOf(unanswered, 'question')} asked</span>
        ) : null}
      </td>
    </tr>
  );
}

function rulingWords(disagreement: ListedDisagreement): string {
  const { ruling } = disagreement;
  if (!isForRuling(disagreement)) return 'to be known';
  if (!ruling || ruling.state === 'WITHDRAWN' || ruling.state === 'REPLACED') return 'open';
  switch (ruling.state) {
    case 'APPLIED':
      return `✓ settled by ${ruling.by.name}`;
    case 'NEEDS_SECOND':
      return '◐ waits for a second person';
    case 'STALE':
      return '△ stale: its tallies changed';
    case 'WITHOUT_TARGET':
      return '△ no longer fits';
  }
}

import { plural, t } from '@lingui/core/macro';
import { Plural, Trans } from '@lingui/react/macro';
import { useRef, type ReactNode } from 'react';
import { Link } from 'wouter';
import { pathOf } from '../ui/path.js';
import { SeverityMark } from '../ui/severity.js';
import { useShortKeys, useShortKeysSetting } from '../ui/short-keys.js';
import { birds } from '../ui/words.js';
import { cellWords } from './cell-words.js';
import { isForRuling, isSettled } from './disagreement-order.js';
import { kindName } from './kind-names.js';
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
  const shown = props.disagreements.length;

  return (
    <>
      <table className="work-list">
        <caption className="for-readers">
          <Plural value={shown} one="Disagreements, # row" other="Disagreements, # rows" />
        </caption>
        <thead>
          <tr>
            <th scope="col" className="number">
              <Trans>Birds</Trans>
            </th>
            <th scope="col">
              <Trans>Severity</Trans>
            </th>
            <th scope="col">
              <Trans>What happened</Trans>
            </th>
            <th scope="col">
              <Trans>Where</Trans>
            </th>
            <th scope="col">
              <Trans>Ruling</Trans>
            </th>
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
          <Trans>
            <kbd>j</kbd> next, <kbd>k</kbd> previous, <kbd>Enter</kbd> opens.
          </Trans>
        </span>
        <label className="row">
          <input
            type="checkbox"
            checked={keysSetting === 'on'}
            onChange={(event) => setKeysSetting(event.target.checked ? 'on' : 'off')}
          />
          <Trans>Single-key shortcuts</Trans>
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
  const stake = disagreement.birds;
  const unanswered = disagreement.queries.filter(({ answer }) => !answer).length;
  const answered = disagreement.queries.length - unanswered;
  return (
    <tr data-settled={isSettled(disagreement)}>
      <td className="number" data-unit={plural(stake, { one: 'bird', other: 'birds' })}>
        {birds(stake)}
      </td>
      <td>
        <SeverityMark severity={disagreement.severity} />
      </td>
      <td className="work-list-text">
        <Link href={pathOf('counts', props.countId, 'disagreements', disagreement.id)}>
          {disagreement.text}
        </Link>
        <span className="soft small"> {kindName(disagreement.kind)}</span>
      </td>
      <td className="small">
        {disagreement.cell ? cellWords(disagreement.cell) : t`several sections`}
      </td>
      <td className="small">
        {rulingWords(disagreement)}
        {answered > 0 ? (
          <span className="block">
            <Plural value={answered} one="# answer in" other="# answers in" />
          </span>
        ) : null}
        {unanswered > 0 ? (
          <span className="block soft">
            <Plural value={unanswered} one="# question asked" other="# questions asked" />
          </span>
        ) : null}
      </td>
    </tr>
  );
}

function rulingWords(disagreement: ListedDisagreement): string {
  const { ruling } = disagreement;
  if (!isForRuling(disagreement)) return t`to be known`;
  if (!ruling || ruling.state === 'WITHDRAWN' || ruling.state === 'REPLACED') {
    return t({ message: 'open', context: 'disagreement' });
  }
  const author = ruling.by.name;
  switch (ruling.state) {
    case 'APPLIED':
      return t`✓ settled by ${author}`;
    case 'NEEDS_SECOND':
      return t`◐ waits for a second person`;
    case 'STALE':
      return t`△ stale: its tallies changed`;
    case 'WITHOUT_TARGET':
      return t`△ no longer fits`;
  }
}

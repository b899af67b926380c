import { t } from '@lingui/core/macro';
import { Trans } from '@lingui/react/macro';
import { useEffect, useRef, type ReactNode } from 'react';
import { useQuery } from 'urql';
import type { LineLedgerQuery } from '../graphql/generated/graphql.js';
import { SourceLines } from '../reviews/source-lines.js';
import { Answer } from '../ui/answer.js';
import { Notice } from '../ui/notice.js';
import { letterObservers } from '../ui/observer-mark.js';
import { Skeleton } from '../ui/skeleton.js';
import { readTaxon } from '../ui/taxon.js';
import { birds } from '../ui/words.js';
import { LineLedger } from './documents.js';
import { ledgerSum } from './ledger-sum.js';

type Compiled = LineLedgerQuery['count']['compiled'];
type Posting = Compiled['ledger'][number];

/** How one compiled line is made up: the sum written out, each part a sentence with its tally lines. */
export function LedgerPanel(props: {
  readonly countId: string;
  readonly taxon: string;
  readonly timeZone: string;
  readonly onClose: () => void;
}): ReactNode {
  const [result, again] = useQuery({
    query: LineLedger,
    variables: { id: props.countId, taxon: props.taxon },
  });
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => heading.current?.focus(), []);
  const name = readTaxon(props.taxon).common;
  return (
    <section className="ledger panel stack" aria-labelledby="ledger-heading">
      <div className="row ledger-head">
        <h2 id="ledger-heading" ref={heading} tabIndex={-1}>
          <Trans>Ledger of {name}</Trans>
        </h2>
        <button type="button" className="button not-printed" onClick={props.onClose}>
          <Trans>Close the ledger</Trans>
        </button>
      </div>
      <Answer
        result={result}
        skeleton={<Skeleton rows={6} label={t`Loading the ledger of this line.`} />}
        retry={() => again({ requestPolicy: 'network-only' })}
      >
        {({ count }) => <LedgerView compiled={count.compiled} timeZone={props.timeZone} />}
      </Answer>
    </section>
  );
}

/** The sum, and below it what came before. */
export function LedgerView(props: {
  readonly compiled: Compiled;
  readonly timeZone: string;
}): ReactNode {
  const { compiled } = props;
  const { terms, foundTwice, before, total } = ledgerSum(compiled.ledger, compiled.reported);
  const number = compiled.line?.number ?? null;
  return (
    <>
      {number === null || number === total ? null : <WrongSum sum={total} line={number} />}
      <p className="sentence">{sumWritten(terms.map(({ birds: moved }) => moved))}</p>
      <table className="ledger-sum">
        <caption>
          <Trans>What goes into the compiled count, less what is taken out.</Trans>
        </caption>
        <thead>
          <tr>
            <th scope="col">
              <Trans>Posting</Trans>
            </th>
            <th scope="col" className="number">
              <Trans>Birds</Trans>
            </th>
          </tr>
        </thead>
        <tbody>
          {terms.map(({ posting, birds: moved }) => (
            <tr key={posting.id}>
              <td>
                <PostingText posting={posting} timeZone={props.timeZone} />
              </td>
              <td className="number">
                {moved < 0 ? '−' : '+'} {birds(Math.abs(moved))}
              </td>
            </tr>
          ))}
        </tbody>
        <tfoot>
          <tr>
            <th scope="row">
              <Trans>Compiled</Trans>
            </th>
            <td className="number">= {birds(total)}</td>
          </tr>
        </tfoot>
      </table>
      {foundTwice.length === 0 ? null : (
        <table className="ledger-found-twice">
          <caption>
            <Trans>
              Found twice: taken off before the sum, since they are counted in another section.
            </Trans>
          </caption>
          <thead>
            <tr>
              <th scope="col">
                <Trans>Posting</Trans>
              </th>
              <th scope="col" className="number">
                <Trans>Birds</Trans>
              </th>
            </tr>
          </thead>
          <tbody>
            {foundTwice.map((posting) => (
              <tr key={posting.id}>
                <td>
                  <PostingText posting={posting} timeZone={props.timeZone} />
                </td>
                <td className="number">{birds(posting.number)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
      {before.length === 0 ? null : (
        <details open>
          <summary>
            <Trans>How these came about</Trans>
          </summary>
          <table className="ledger-before">
            <caption className="for-readers">
              <Trans>Postings between tallies, consensus and rulings</Trans>
            </caption>
            <thead>
              <tr>
                <th scope="col">
                  <Trans>Posting</Trans>
                </th>
                <th scope="col">
                  <Trans>From account, to account</Trans>
                </th>
                <th scope="col" className="number">
                  <Trans>Birds</Trans>
                </th>
              </tr>
            </thead>
            <tbody>
              {before.map((posting) => (
                <tr key={posting.id}>
                  <td>
                    <PostingText posting={posting} timeZone={props.timeZone} />
                  </td>
                  <td className="small soft account">
                    {posting.from} → {posting.to}
                  </td>
                  <td className="number">{birds(posting.number)}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </details>
      )}
    </>
  );
}

/** A sum that differs from the line it belongs to: nobody should sign such a count. */
function WrongSum(props: { readonly sum: number; readonly line: number }): ReactNode {
  const [sum, line] = [birds(props.sum), birds(props.line)];
  return (
    <Notice kind="refused" title={t`This ledger does not add up.`}>
      <p>
        <Trans>
          The postings give {sum}, the compiled line says {line}. Do not sign this count; tell
          whoever runs this server.
        </Trans>
      </p>
    </Notice>
  );
}

/** `1,050 + 1,083 − 360 = 1,773`, to be checked by hand. */
export function sumWritten(terms: readonly number[]): string {
  const [first = 0, ...rest] = terms;
  const start = first < 0 ? `−${birds(-first)}` : birds(first);
  const steps = rest.map((term) => (term < 0 ? ` − ${birds(-term)}` : ` + ${birds(term)}`));
  const total = terms.reduce((sum, term) => sum + term, 0);
  return `${start}${steps.join('')} = ${birds(total)}`;
}

function PostingText(props: { readonly posting: Posting; readonly timeZone: string }): ReactNode {
  const { posting } = props;
  const letters = letterObservers(posting.lines.map(({ tally }) => tally.observer));
  return (
    <>
      <p>{posting.text}</p>
      <SourceLines lines={posting.lines} letters={letters} timeZone={props.timeZone} />
    </>
  );
}

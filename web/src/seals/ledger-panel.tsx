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
  return (
    <section className="ledger panel stack" aria-labelledby="ledger-heading">
      <div className="row ledger-head">
        <h2 id="ledger-heading" ref={heading} tabIndex={-1}>
          Ledger of {readTaxon(props.taxon).common}
        </h2>
        <button type="button" className="button not-printed" onClick={props.onClose}>
          Close the ledger
        </button>
      </div>
      <Answer
        result={result}
        skeleton={<Skeleton rows={6} label="Loading the ledger of this line." />}
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
      {number === null || number === total ? null : (
        <Notice kind="refused" title="This ledger does not add up.">
          <p>
            The postings give {birds(total)}, the compiled line says {birds(number)}. Do not sign
            this count; tell whoever runs this server.
          </p>
        </Notice>
      )}
      <p className="sentence">{sumWritten(terms.map(({ birds: moved }) => moved))}</p>
      <table className="ledger-sum">
        <caption>What goes into the compiled count, less what is taken out.</caption>
        <thead>
          <tr>
            <th scope="col">Posting</th>
            <th scope="col" className="number">
              Birds
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
            <th scope="row">Compiled</th>
            <td className="number">= {birds(total)}</td>
          </tr>
        </tfoot>
      </table>
      {foundTwice.length === 0 ? null : (
        <table className="ledger-found-twice">
          <caption>
            Found twice: taken off before the sum, since they are counted in another section.
          </caption>
          <thead>
            <tr>
              <th scope="col">Posting</th>
              <th scope="col" className="number">
                Birds
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
          <summary>How these came about</summary>
          <table>
            <caption className="for-readers">
              Postings between tallies, consensus and rulings
            </caption>
            <thead>
              <tr>
                <th scope="col">Posting</th>
                <th scope="col">From account, to account</th>
                <th scope="col" className="number">
                  Birds
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

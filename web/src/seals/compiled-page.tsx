import { useMemo, type ReactNode } from 'react';
import { useQuery } from 'urql';
import { useSearchParams } from 'wouter';
import type { CompiledCountPageQuery } from '../graphql/generated/graphql.js';
import { useCountInFrame } from '../plans/count-frame.js';
import { Answer } from '../ui/answer.js';
import { Extent, ExtentLegend } from '../ui/extent.js';
import { Notice } from '../ui/notice.js';
import { Page } from '../ui/page.js';
import { Skeleton } from '../ui/skeleton.js';
import { birds, countOf, dayAndClock, inWords, listed } from '../ui/words.js';
import { AllocationPart } from './allocation-part.js';
import { CompiledCountPage } from './documents.js';
import { LedgerPanel } from './ledger-panel.js';
import { SignOffPanel } from './sign-off-panel.js';

type Count = CompiledCountPageQuery['count'];
type Line = Count['compiled']['lines'][number];

/** The result: one line a taxon, and each line's ledger one click away. */
export function CompiledPage(props: { readonly countId: string }): ReactNode {
  const [result, again] = useQuery({
    query: CompiledCountPage,
    variables: { id: props.countId },
    context: useMemo(
      () => ({ additionalTypenames: ['Ruling', 'Tally', 'CompiledCount', 'Seal', 'SignOff'] }),
      [],
    ),
  });
  const mayReview = result.data?.count.may.includes('REVIEW') ?? false;
  return (
    <Page title="Compiled count">
      <div className={mayReview ? 'desk' : ''}>
        <div className="stack">
          <Answer
            result={result}
            skeleton={<Skeleton rows={14} label="Loading the compiled count." />}
            retry={() => again({ requestPolicy: 'network-only' })}
          >
            {({ count }) => <Compiled count={count} />}
          </Answer>
        </div>
        {mayReview ? (
          <aside className="desk-side stack not-printed" aria-label="What to do">
            <SignOffPanel countId={props.countId} />
          </aside>
        ) : null}
      </div>
    </Page>
  );
}

function Compiled(props: { readonly count: Count }): ReactNode {
  const { count } = props;
  const { compiled } = count;
  const timeZone = useCountInFrame()?.timeZone ?? 'UTC';
  const [search, setSearch] = useSearchParams();
  const openTaxon = search.get('line');
  const lines = useMemo(
    () =>
      [...compiled.lines].sort(
        (one, other) => other.number - one.number || (one.taxon < other.taxon ? -1 : 1),
      ),
    [compiled.lines],
  );
  const show = (taxon: string | null): void =>
    setSearch(taxon === null ? {} : { line: taxon }, { replace: openTaxon !== null });

  function close(): void {
    const last = openTaxon;
    show(null);
    // Back to where the ledger was opened.
    requestAnimationFrame(() => {
      if (last !== null) document.getElementById(`line-of-${last}`)?.focus();
    });
  }

  return (
    <>
      <p className="sentence">
        {countOf(compiled.total, 'bird')} of{' '}
        {countOf(lines.filter(({ number }) => number > 0).length, 'taxon', 'taxa')}
        {compiled.flyingThroughTotal > 0
          ? `, and ${birds(compiled.flyingThroughTotal)} more that only flew through and are not in the total`
          : ''}
        .
      </p>
      <Standing count={count} timeZone={timeZone} />
      {lines.length === 0 ? (
        <Notice kind="plain" title="Nothing is compiled yet.">
          <p>As soon as the first tally is in, its lines appear here as a draft.</p>
        </Notice>
      ) : (
        <>
          {openTaxon === null ? null : (
            <LedgerPanel
              key={openTaxon}
              countId={count.id}
              taxon={openTaxon}
              timeZone={timeZone}
              onClose={close}
            />
          )}
          <p className="soft not-printed">Choose a taxon to see its ledger.</p>
          <ExtentLegend />
          <LineTable
            lines={lines}
            total={compiled.total}
            flyingThrough={compiled.flyingThroughTotal}
            openTaxon={openTaxon}
            onOpen={show}
          />
          <p className="small soft">
            Interval: from known counting error and from how far the observers differ, 95 %. It
            cannot know of birds that nobody saw, or that every observer counted low.
          </p>
          <AllocationPart allocation={compiled.allocation} />
        </>
      )}
    </>
  );
}

/** Draft, signed or sealed: said before any number is used. */
function Standing(props: { readonly count: Count; readonly timeZone: string }): ReactNode {
  const { compiled, state } = props.count;
  const { seal, signOffs } = compiled;
  if (seal) {
    return (
      <Notice
        kind="done"
        title={`Sealed on ${dayAndClock(seal.at, props.timeZone)} by ${seal.by.name}.`}
      >
        <p className="small">
          Anyone can check it: result <code className="hash">{seal.resultHash}</code>, audit root{' '}
          <code className="hash">{seal.auditRoot}</code> over{' '}
          {countOf(seal.auditSize, 'entry', 'entries')}.
        </p>
      </Notice>
    );
  }
  if (state === 'SIGNED') {
    return (
      <Notice
        kind="done"
        title={`Signed by ${listed(signOffs.map(({ by, as }) => `${by.name} as ${inWords(as)}`))}.`}
      >
        <p>It can be sealed now; until then a new ruling takes the signatures back.</p>
      </Notice>
    );
  }
  return (
    <Notice kind="caution" title="This is a draft.">
      <p>
        {signOffs.length === 0
          ? 'Nobody has signed it off yet.'
          : `Signed so far: ${listed(signOffs.map(({ by, as }) => `${by.name} as ${inWords(as)}`))}.`}
      </p>
    </Notice>
  );
}

function LineTable(props: {
  readonly lines: readonly Line[];
  readonly total: number;
  readonly flyingThrough: number;
  readonly openTaxon: string | null;
  readonly onOpen: (taxon: string) => void;
}): ReactNode {
  return (
    <div className="wide" role="region" aria-label="Compiled count" tabIndex={0}>
      <table className="compiled">
        <caption className="for-readers">Compiled count, one line a taxon</caption>
        <thead>
          <tr>
            <th scope="col">Taxon</th>
            <th scope="col" className="number">
              Birds
            </th>
            <th scope="col" className="number">
              Interval
            </th>
            <th scope="col">
              <span className="for-readers">Drawn</span>
            </th>
            <th scope="col" className="number">
              At least–at most
            </th>
            <th scope="col" className="number">
              Flying through
            </th>
          </tr>
        </thead>
        <tbody>
          {props.lines.map((line) => (
            <tr key={line.taxon} data-open={line.taxon === props.openTaxon}>
              <th scope="row">
                <button
                  type="button"
                  id={`line-of-${line.taxon}`}
                  className="line-button"
                  aria-expanded={line.taxon === props.openTaxon}
                  onClick={() => props.onOpen(line.taxon)}
                >
                  {line.englishName}
                </button>
                {line.englishName === line.taxon ? null : (
                  <span className="taxon soft small taxon-below">{line.taxon}</span>
                )}
                {line.presentNotCounted ? (
                  <span className="block small soft">also seen uncounted: at least one more</span>
                ) : null}
              </th>
              <td className="number compiled-number">{birds(line.number)}</td>
              <td className="number soft">
                {birds(line.low)}–{birds(line.high)}
              </td>
              <td>
                <Extent {...line} />
              </td>
              <td className="number">
                {line.atLeast === line.atMost
                  ? birds(line.atLeast)
                  : `${birds(line.atLeast)}–${birds(line.atMost)}`}
              </td>
              <td className="number">
                {line.flyingThrough === 0 ? (
                  <span className="soft">–</span>
                ) : (
                  birds(line.flyingThrough)
                )}
              </td>
            </tr>
          ))}
        </tbody>
        <tfoot>
          <tr>
            <th scope="row">Total</th>
            <td className="number compiled-number">{birds(props.total)}</td>
            <td colSpan={3} />
            <td className="number">
              {props.flyingThrough === 0 ? '–' : birds(props.flyingThrough)}
            </td>
          </tr>
        </tfoot>
      </table>
    </div>
  );
}

import { plural, t } from '@lingui/core/macro';
import { Plural, Trans } from '@lingui/react/macro';
import { useMemo, type ReactNode } from 'react';
import { useQuery } from 'urql';
import { useSearchParams } from 'wouter';
import type { CompiledCountPageQuery } from '../graphql/generated/graphql.js';
import { useCountInFrame } from '../plans/count-frame.js';
import { Answer } from '../ui/answer.js';
import { Extent, ExtentLegend } from '../ui/extent.js';
import { Notice } from '../ui/notice.js';
import { Page } from '../ui/page.js';
import { roleName } from '../ui/role-names.js';
import { Skeleton } from '../ui/skeleton.js';
import { readTaxon } from '../ui/taxon.js';
import { birds, dayAndClock, listed } from '../ui/words.js';
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
    <Page title={t`Compiled count`}>
      <div className={mayReview ? 'desk' : ''}>
        <div className="stack">
          <Answer
            result={result}
            skeleton={<Skeleton rows={14} label={t`Loading the compiled count.`} />}
            retry={() => again({ requestPolicy: 'network-only' })}
          >
            {({ count }) => <Compiled count={count} />}
          </Answer>
        </div>
        {mayReview ? (
          <aside className="desk-side stack not-printed" aria-label={t`What to do`}>
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
      <p className="sentence">{totalSentence(compiled)}</p>
      <Standing count={count} timeZone={timeZone} />
      {lines.length === 0 ? (
        <Notice kind="plain" title={t`Nothing is compiled yet.`}>
          <p>
            <Trans>As soon as the first tally is in, its lines appear here as a draft.</Trans>
          </p>
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
          <p className="soft not-printed">
            <Trans>Choose a taxon to see its ledger.</Trans>
          </p>
          <ExtentLegend />
          <LineTable
            lines={lines}
            total={compiled.total}
            flyingThrough={compiled.flyingThroughTotal}
            openTaxon={openTaxon}
            onOpen={show}
          />
          <p className="small soft">
            <Trans>
              Interval: from known counting error and from how far the observers differ, 95 %. It
              cannot know of birds that nobody saw, or that every observer counted low.
            </Trans>
          </p>
          <AllocationPart allocation={compiled.allocation} />
        </>
      )}
    </>
  );
}

/** How many birds of how many taxa were compiled. */
function totalSentence(compiled: Count['compiled']): string {
  const { total, flyingThroughTotal: flying } = compiled;
  const taxa = compiled.lines.filter(({ number }) => number > 0).length;
  return flying > 0
    ? t`${plural(total, { one: '# bird', other: '# birds' })} of ${plural(taxa, { one: '# taxon', other: '# taxa' })}, and ${plural(flying, { one: '# more that only flew through and is', other: '# more that only flew through and are' })} not in the total.`
    : t`${plural(total, { one: '# bird', other: '# birds' })} of ${plural(taxa, { one: '# taxon', other: '# taxa' })}.`;
}

/** Draft, signed or sealed: said before any number is used. */
function Standing(props: { readonly count: Count; readonly timeZone: string }): ReactNode {
  const { compiled, state } = props.count;
  const { seal, signOffs } = compiled;
  if (seal) {
    const { resultHash, auditRoot, auditSize } = seal;
    const [time, sealer] = [dayAndClock(seal.at, props.timeZone), seal.by.name];
    return (
      <Notice kind="done" title={t`Sealed on ${time} by ${sealer}.`}>
        <p className="small">
          <Trans>
            Anyone can check it: result <code className="hash">{resultHash}</code>, audit root{' '}
            <code className="hash">{auditRoot}</code> over{' '}
            <Plural value={auditSize} one="# entry" other="# entries" />.
          </Trans>
        </p>
      </Notice>
    );
  }
  const signers = listed(
    signOffs.map(({ by, as }) => {
      const [name, role] = [by.name, roleName(as)];
      return t`${name} as ${role}`;
    }),
  );
  if (state === 'SIGNED') {
    return (
      <Notice kind="done" title={t`Signed by ${signers}.`}>
        <p>
          <Trans>It can be sealed now; until then a new ruling takes the signatures back.</Trans>
        </p>
      </Notice>
    );
  }
  return (
    <Notice kind="caution" title={t`This is a draft.`}>
      <p>
        {signOffs.length === 0 ? t`Nobody has signed it off yet.` : t`Signed so far: ${signers}.`}
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
    <div className="wide" role="region" aria-label={t`Compiled count`} tabIndex={0}>
      <table className="compiled">
        <caption className="for-readers">
          <Trans>Compiled count, one line a taxon</Trans>
        </caption>
        <thead>
          <tr>
            <th scope="col">
              <Trans>Taxon</Trans>
            </th>
            <th scope="col" className="number">
              <Trans>Birds</Trans>
            </th>
            <th scope="col" className="number">
              <Trans>Interval</Trans>
            </th>
            <th scope="col">
              <span className="for-readers">
                <Trans>Drawn</Trans>
              </span>
            </th>
            <th scope="col" className="number">
              <Trans>At least–at most</Trans>
            </th>
            <th scope="col" className="number">
              <Trans>Flying through</Trans>
            </th>
          </tr>
        </thead>
        <tbody>
          {props.lines.map((line) => (
            <LineRow
              key={line.taxon}
              line={line}
              isOpen={line.taxon === props.openTaxon}
              onOpen={() => props.onOpen(line.taxon)}
            />
          ))}
        </tbody>
        <tfoot>
          <tr>
            <th scope="row">
              <Trans>Total</Trans>
            </th>
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

function LineRow(props: {
  readonly line: Line;
  readonly isOpen: boolean;
  readonly onOpen: () => void;
}): ReactNode {
  const { line, isOpen } = props;
  const { common } = readTaxon(line.taxon);
  return (
    <tr data-open={isOpen}>
      <th scope="row">
        <button
          type="button"
          id={`line-of-${line.taxon}`}
          className="line-button"
          aria-expanded={isOpen}
          onClick={props.onOpen}
        >
          {common}
        </button>
        {common === line.taxon ? null : (
          <span className="taxon soft small taxon-below">{line.taxon}</span>
        )}
        {line.presentNotCounted ? (
          <span className="block small soft">
            <Trans>also seen uncounted: at least one more</Trans>
          </span>
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
        {line.flyingThrough === 0 ? <span className="soft">–</span> : birds(line.flyingThrough)}
      </td>
    </tr>
  );
}

import { plural, t } from '@lingui/core/macro';
import { Trans } from '@lingui/react/macro';
import { useMemo, useState, type ReactNode } from 'react';
import { useQuery } from 'urql';
import type { CountCoverageQuery } from '../graphql/generated/graphql.js';
import { Cautions } from '../tallies/cautions.js';
import { Answer } from '../ui/answer.js';
import { Page } from '../ui/page.js';
import { Skeleton } from '../ui/skeleton.js';
import { listed, span } from '../ui/words.js';
import { Assignments } from './assignments.js';
import { useCountInFrame } from './count-frame.js';
import { CountWindows } from './count-windows.js';
import { CoverageMatrix } from './coverage-matrix.js';
import { coverageFill, coverageMarks, type CoverageEntry } from './coverage-words.js';
import { CountCoverage } from './documents.js';
import { GapList } from './gap-list.js';
import { WaterbodyMap } from './waterbody-map.js';

type Count = CountCoverageQuery['count'];

/** The leader's view: which sections are counted, by whom, and what is missing. */
export function CoveragePage(props: { readonly countId: string }): ReactNode {
  const [result, again] = useQuery({
    query: CountCoverage,
    variables: { id: props.countId },
    context: useMemo(() => ({ additionalTypenames: ['Tally', 'Assignment', 'Count'] }), []),
  });
  return (
    <Page
      title={t`Coverage`}
      intro={t`Who counts which section from where, what has come in, and what is missing.`}
    >
      <Answer
        result={result}
        skeleton={<Skeleton rows={12} label={t`Loading the coverage.`} />}
        retry={() => again({ requestPolicy: 'network-only' })}
      >
        {({ count }) => (
          <Coverage count={count} again={() => again({ requestPolicy: 'network-only' })} />
        )}
      </Answer>
    </Page>
  );
}

function Coverage(props: { readonly count: Count; readonly again: () => void }): ReactNode {
  const { count } = props;
  const [windowId, setWindowId] = useState(count.windows[0]?.id ?? '');
  const timeZone = useCountInFrame()?.timeZone ?? 'UTC';
  const entryFor = (sectionId: string, ofWindow: string): CoverageEntry | undefined =>
    count.coverage.find((entry) => entry.section.id === sectionId && entry.window.id === ofWindow);
  return (
    <div className="stack">
      <p className="sentence">{coverageSentence(count)}</p>
      <div className="two-columns">
        <div className="stack">
          <GapList count={count} entryFor={entryFor} timeZone={timeZone} />
          <CoverageMatrix count={count} entryFor={entryFor} timeZone={timeZone} />
          <CountWindows count={count} timeZone={timeZone} />
        </div>
        <figure className="stack-tight">
          {count.windows.length < 2 ? null : (
            <label className="row">
              <span>
                <Trans>Window on the map</Trans>
              </span>
              <select value={windowId} onChange={(event) => setWindowId(event.target.value)}>
                {count.windows.map((window) => (
                  <option key={window.id} value={window.id}>
                    {span(window.start, window.end, timeZone)}
                  </option>
                ))}
              </select>
            </label>
          )}
          <WaterbodyMap
            label={t`Map of the waterbody: its sections with their coverage, vantage points and what is seen from them. The table beside it says the same.`}
            sections={count.sections}
            vantages={count.vantages}
            shoreline={count.shoreline}
            fillOf={(sectionId) => coverageFill(entryFor(sectionId, windowId))}
            wordsOf={(sectionId) => coverageMarks(entryFor(sectionId, windowId))}
          />
          <figcaption className="soft small">
            <Trans>
              Plain: two or more independent tallies. Lines: one. Broken lines: partial only. Dots:
              assigned, nothing in yet. White: nobody assigned. Triangles are vantage points; dashed
              outlines show what is seen from them.
            </Trans>
          </figcaption>
        </figure>
      </div>
      <Assignments count={count} timeZone={timeZone} again={props.again} />
      <Cautions open={count.state === 'OPEN'} />
    </div>
  );
}

/** The state of the count in one sentence. */
function coverageSentence(count: Pick<Count, 'coverage' | 'sections' | 'windows'>): string {
  const total = count.sections.length * count.windows.length;
  const compared = count.coverage.filter((entry) => entry.independentTallies >= 2).length;
  const single = count.coverage.filter((entry) => entry.independentTallies === 1).length;
  const missing = total - compared - single;
  const units =
    count.windows.length > 1
      ? plural(total, { one: '# section in a window', other: '# sections by window' })
      : plural(total, { one: '# section', other: '# sections' });
  const shares = listed([
    plural(compared, {
      one: '# has two or more independent tallies',
      other: '# have two or more independent tallies',
    }),
    ...(single === 0 ? [] : [plural(single, { one: '# has one only', other: '# have one only' })]),
    ...(missing === 0
      ? []
      : [plural(missing, { one: '# has no full tally yet', other: '# have no full tally yet' })]),
  ]);
  return t`So far, of ${units}, ${shares}.`;
}

import type { ReactNode } from 'react';
import { Extent } from '../ui/extent.js';
import { birds, inWords, percent, sentenceCase, twoDecimals } from '../ui/words.js';

interface ConsensusGroup {
  readonly totals: readonly {
    readonly observer: string;
    readonly observerName: string;
    readonly number: number;
    readonly stated: boolean;
  }[];
  readonly consensus: {
    readonly rule: string;
    readonly number: number;
    readonly low: number;
    readonly high: number;
    readonly q?: number | null | undefined;
    readonly tau2?: number | null | undefined;
    readonly i2?: number | null | undefined;
    readonly predicted?: { readonly low: number; readonly high: number } | null | undefined;
    readonly byRule: readonly { readonly rule: string; readonly number: number }[];
  };
}

/** What each rule would give for the group's total, and which one the draft follows. */
export function ConsensusTable(props: { readonly group: ConsensusGroup }): ReactNode {
  const { consensus, totals } = props.group;
  const full = Math.max(consensus.high, ...consensus.byRule.map(({ number }) => number), 1);
  return (
    <section className="stack-tight" aria-labelledby="consensus-heading">
      <h2 id="consensus-heading">What the rules make of it</h2>
      <p>
        {draftSentence(consensus)} {spreadSentence(consensus, totals.length)}
      </p>
      <div className="wide" role="region" aria-label="Table: what the rules give" tabIndex={0}>
        <table className="consensus-table">
          <thead>
            <tr>
              <th scope="col">Rule</th>
              <th scope="col" className="number">
                Birds
              </th>
              <th scope="col">Drawn, with the draft’s interval</th>
            </tr>
          </thead>
          <tbody>
            {consensus.byRule.map(({ rule, number }) => {
              const isDraft = rule === consensus.rule;
              return (
                <tr key={rule} data-draft={isDraft}>
                  <th scope="row">
                    {sentenceCase(inWords(rule))}
                    {isDraft ? ' (the draft)' : ''}
                  </th>
                  <td className="number">{birds(number)}</td>
                  <td>
                    <Extent
                      number={number}
                      low={isDraft ? consensus.low : number}
                      high={isDraft ? consensus.high : number}
                      full={full}
                    />
                  </td>
                </tr>
              );
            })}
          </tbody>
        </table>
      </div>
    </section>
  );
}

function draftSentence(consensus: ConsensusGroup['consensus']): string {
  const interval = `between ${birds(consensus.low)} and ${birds(consensus.high)}`;
  switch (consensus.rule) {
    case 'single':
      return `One observer counted here, so the draft is theirs: ${birds(consensus.number)}, likely ${interval}.`;
    case 'partial-only':
      return `Only partial tallies cover this place, so the draft of ${birds(consensus.number)} is a lower bound.`;
    case 'ruling':
      return `A ruling sets ${birds(consensus.number)}.`;
    default:
      return `By the rule “${inWords(consensus.rule)}” the draft is ${birds(consensus.number)}, likely ${interval}.`;
  }
}

/** How far the observers differ, beyond what counting error explains. */
function spreadSentence(consensus: ConsensusGroup['consensus'], observers: number): string {
  const { i2, q, tau2 } = consensus;
  if (i2 === null || i2 === undefined || observers < 2) return '';
  const meaning =
    i2 < 1
      ? 'Their counts differ no more than counting error explains'
      : `About ${percent(i2 / 100)} of the spread between them is more than counting error explains`;
  const numbers = [
    `I² ${Math.round(i2)} %`,
    ...(q === null || q === undefined ? [] : [`Q ${twoDecimals(q)}`]),
    ...(tau2 === null || tau2 === undefined ? [] : [`τ² ${twoDecimals(tau2)}`]),
  ];
  const { predicted } = consensus;
  const next =
    predicted === null || predicted === undefined
      ? ''
      : ` One more observer would likely count between ${birds(Math.floor(predicted.low))} and ${birds(Math.ceil(predicted.high))}.`;
  return `${meaning} (${numbers.join(', ')}).${next}`;
}

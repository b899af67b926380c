import { t } from '@lingui/core/macro';
import { Trans } from '@lingui/react/macro';
import type { ReactNode } from 'react';
import { Extent } from '../ui/extent.js';
import { birds, percent, sentenceCase, twoDecimals } from '../ui/words.js';
import { ruleName } from './rule-names.js';

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
      <h2 id="consensus-heading">
        <Trans>What the rules make of it</Trans>
      </h2>
      <p>
        {draftSentence(consensus)} {spreadSentence(consensus, totals.length)}
      </p>
      <div className="wide" role="region" aria-label={t`Table: what the rules give`} tabIndex={0}>
        <table className="consensus-table">
          <thead>
            <tr>
              <th scope="col">
                <Trans>Rule</Trans>
              </th>
              <th scope="col" className="number">
                <Trans>Birds</Trans>
              </th>
              <th scope="col">
                <Trans>Drawn, with the draft’s interval</Trans>
              </th>
            </tr>
          </thead>
          <tbody>
            {consensus.byRule.map(({ rule, number }) => {
              const isDraft = rule === consensus.rule;
              const name = sentenceCase(ruleName(rule));
              return (
                <tr key={rule} data-draft={isDraft}>
                  <th scope="row">{isDraft ? t`${name} (the draft)` : name}</th>
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
  const [number, low, high] = [
    birds(consensus.number),
    birds(consensus.low),
    birds(consensus.high),
  ];
  const rule = ruleName(consensus.rule);
  switch (consensus.rule) {
    case 'single':
      return t`One observer counted here, so the draft is theirs: ${number}, likely between ${low} and ${high}.`;
    case 'partial-only':
      return t`Only partial tallies cover this place, so the draft of ${number} is a lower bound.`;
    case 'ruling':
      return t`A ruling sets ${number}.`;
    default:
      return t`By the rule “${rule}” the draft is ${number}, likely between ${low} and ${high}.`;
  }
}

/** How far the observers differ, beyond what counting error explains. */
function spreadSentence(consensus: ConsensusGroup['consensus'], observers: number): string {
  const { i2, q, tau2 } = consensus;
  if (i2 === null || i2 === undefined || observers < 2) return '';
  const wholePercent = Math.round(i2);
  const numbers = [
    t`I² ${wholePercent} %`,
    ...(q === null || q === undefined ? [] : [`Q ${twoDecimals(q)}`]),
    ...(tau2 === null || tau2 === undefined ? [] : [`τ² ${twoDecimals(tau2)}`]),
  ].join(', ');
  const share = percent(i2 / 100);
  const spread =
    i2 < 1
      ? t`Their counts differ no more than counting error explains (${numbers}).`
      : t`About ${share} of the spread between them is more than counting error explains (${numbers}).`;
  const { predicted } = consensus;
  if (predicted === null || predicted === undefined) return spread;
  const [least, most] = [birds(Math.floor(predicted.low)), birds(Math.ceil(predicted.high))];
  const next = t`One more observer would likely count between ${least} and ${most}.`;
  return `${spread} ${next}`;
}

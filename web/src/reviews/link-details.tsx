import { t } from '@lingui/core/macro';
import { Trans } from '@lingui/react/macro';
import { Fragment, type ReactNode } from 'react';
import type { LinkPartsFragment } from '../graphql/generated/graphql.js';
import { readTaxon } from '../ui/taxon.js';
import { birds, decimals, listed } from '../ui/words.js';
import {
  deductionSentence,
  partSentences,
  scoreSentences,
  strengthOf,
  termName,
  termsInOrder,
  timesOf,
} from './link-words.js';

type Sighting = LinkPartsFragment['first'];

/** Two sightings that may be one flock side by side, and what speaks for and against it. */
export function LinkDetails(props: {
  readonly link: LinkPartsFragment;
  /** All of the count: some may share a sighting with this one. */
  readonly links?: readonly LinkPartsFragment[];
  readonly timeZone: string;
}): ReactNode {
  const { link, links = [link], timeZone } = props;
  const rows: readonly (readonly [string, (sighting: Sighting) => ReactNode])[] = [
    [t`Section`, ({ section }) => section.name],
    [t`Birds`, ({ number }) => birds(number)],
    [t`Taxon`, ({ taxon }) => <Taxon taxon={taxon} />],
    [t({ message: 'Seen', context: 'time' }), (sighting) => timesOf(sighting, timeZone)],
    [t`By`, ({ observers }) => listed(observers.map(({ name }) => name))],
    [t`Place`, ({ position }) => (position ? t`noted` : t`anywhere in the section`)],
  ];
  return (
    <div className="stack">
      <table className="sightings">
        <caption>
          {link.kind === 'overlap'
            ? t`Both could see the same water: a flock there may be in both tallies.`
            : t`A flock that left one section may be the one that showed up in the other.`}
        </caption>
        <thead>
          <tr>
            <td />
            <th scope="col">
              <SightingMark mark="first" /> <Trans>First sighting</Trans>
            </th>
            <th scope="col">
              <SightingMark mark="second" /> <Trans>Second sighting</Trans>
            </th>
          </tr>
        </thead>
        <tbody>
          {rows.map(([name, valueOf]) => (
            <tr key={name}>
              <th scope="row">{name}</th>
              <td>{valueOf(link.first)}</td>
              <td>{valueOf(link.second)}</td>
            </tr>
          ))}
        </tbody>
      </table>
      {[...partSentences(link, links), ...scoreSentences(link), deductionSentence(link)].map(
        (sentence) => (
          <p key={sentence}>{sentence}</p>
        ),
      )}
      <details>
        <summary>
          <Trans>Every term of the score</Trans>
        </summary>
        <Terms link={link} />
      </details>
    </div>
  );
}

/** A pair or group in a narrow column: its line may break after each slash. */
function Taxon(props: { readonly taxon: string }): ReactNode {
  const { name, common } = readTaxon(props.taxon);
  const broken = (text: string): ReactNode =>
    text.split('/').map((part, index) => (
      <Fragment key={part}>
        {index === 0 ? null : '/'}
        <wbr />
        {part}
      </Fragment>
    ));
  return (
    <>
      {broken(common)}
      {common === name ? null : (
        <span className="taxon soft small taxon-below"> {broken(name)}</span>
      )}
    </>
  );
}

/** The same shape and colour as on the map and the time line. */
function SightingMark(props: { readonly mark: 'first' | 'second' }): ReactNode {
  return (
    <span className="sighting-mark" data-mark={props.mark} aria-hidden="true">
      {props.mark === 'first' ? '1' : '2'}
    </span>
  );
}

const barWidth = 96;

/** The weights as bars from a middle line: to the right one flock, to the left two. */
function Terms(props: { readonly link: LinkPartsFragment }): ReactNode {
  const terms = termsInOrder(props.link);
  const largest = Math.max(...terms.map(({ weight }) => Math.abs(weight)), 1);
  const half = barWidth / 2;
  return (
    <div className="wide" role="region" aria-label={t`Terms of the score`} tabIndex={0}>
      <table>
        <caption>
          <Trans>
            Log-likelihood ratios: bars to the right speak for one flock, to the left for two.
          </Trans>
        </caption>
        <thead>
          <tr>
            <th scope="col">
              <Trans>Term</Trans>
            </th>
            <th scope="col">
              <Trans>Speaks</Trans>
            </th>
            <th scope="col" className="number">
              <Trans>Weight</Trans>
            </th>
            <th scope="col">
              <span className="for-readers">
                <Trans>Drawn</Trans>
              </span>
            </th>
          </tr>
        </thead>
        <tbody>
          {terms.map(({ name, text, weight }) => {
            const length = (Math.abs(weight) / largest) * (half - 2);
            return (
              <tr key={text}>
                <th scope="row" className="term-text">
                  <span className="label block">{termName(name)}</span> {text}
                </th>
                <td>{strengthOf(weight)}</td>
                <td className="number">
                  {weight > 0 ? '+' : weight < 0 ? '−' : ''}
                  {decimals(Math.abs(weight), 1, 1)}
                </td>
                <td>
                  <svg width={barWidth} height="16" aria-hidden="true">
                    <line x1={half} x2={half} y1="0" y2="16" stroke="var(--line)" />
                    <rect
                      x={weight >= 0 ? half : half - length}
                      width={Math.max(length, 1)}
                      y="3"
                      height="10"
                      fill={weight >= 0 ? 'var(--data-compatible)' : 'var(--data-only)'}
                    />
                  </svg>
                </td>
              </tr>
            );
          })}
        </tbody>
      </table>
    </div>
  );
}

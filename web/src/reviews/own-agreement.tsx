import { t } from '@lingui/core/macro';
import { Trans } from '@lingui/react/macro';
import type { ReactNode } from 'react';
import type { OwnAgreementQuery } from '../graphql/generated/graphql.js';
import { listed, twoDecimals } from '../ui/words.js';
import { pictureNotes, measureKeys, measureNotes } from './agreement-notes.js';
import { AgreementSection, OnThisPage } from './agreement-sections.js';
import { about, comparedWith, isOffLevel, restsOn } from './agreement-words.js';
import { ConfusionPart } from './confusion-part.js';
import { PairTable } from './measures-table.js';
import { MethodNote } from './method-note.js';
import { RatioPart } from './ratio-part.js';
import { StatisticTable } from './statistic-table.js';

type Own = OwnAgreementQuery['count']['ownAgreement'];

/** What an observer sees: how they agree with each who counted the same, and nobody else's figures. */
export function OwnAgreementView(props: { readonly own: Own }): ReactNode {
  const { byPair: pairs, ratios, minimumUnits: least } = props.own;
  if (pairs.length === 0) {
    return (
      <p className="sentence">
        <Trans>
          Nobody else counted a section of yours in the same window independently of you, so there
          is nothing to compare your tallies with.
        </Trans>
      </p>
    );
  }
  const parts = [
    {
      id: 'ratios',
      short: t`Ratios`,
      title: t`Numbers: your counts beside theirs`,
      content: <RatioPart pairs={pairs} least={least} />,
    },
    {
      id: 'names',
      short: t`Names`,
      title: t`Names: what birds were called`,
      content: <ConfusionPart all={null} pairs={pairs} least={least} />,
    },
    {
      id: 'pairs',
      short: t`All numbers`,
      title: t`All numbers`,
      content: <OwnNumbers own={props.own} />,
    },
  ];
  return (
    <>
      <p className="sentence">{ownSentence(ratios)}</p>
      <OnThisPage parts={parts} />
      {parts.map(({ id, title, content }) => (
        <AgreementSection key={id} id={id} title={title}>
          {content}
        </AgreementSection>
      ))}
    </>
  );
}

function OwnNumbers(props: { readonly own: Own }): ReactNode {
  const { byPair: pairs, ratios, minimumUnits: least } = props.own;
  return (
    <>
      <PairTable pairs={pairs} least={least} />
      <StatisticTable
        label={t`your ratio to the others`}
        columns={[
          { kind: 'text', title: t`Observer`, text: ({ observer }) => observer.name },
          {
            kind: 'statistic',
            title: t`Ratio`,
            statistic: ({ ratio }) => ratio,
            write: twoDecimals,
          },
        ]}
        rows={ratios}
        keyOf={({ observer }) => observer.id}
        least={least}
      />
      <div>
        <MethodNote
          note={pictureNotes.simpleRatio}
          here={ratios.map(({ ratio }) => restsOn(ratio, least)).join(' ')}
        />
        {measureKeys.map((key) => (
          <MethodNote
            key={key}
            note={measureNotes[key]}
            here={pairs
              .map(({ a, b, measures }) =>
                about(listed([a.name, b.name]), restsOn(measures[key], least)),
              )
              .join(' ')}
          />
        ))}
      </div>
    </>
  );
}

/** How the observer's numbers run beside those of the others. */
function ownSentence(ratios: Own['ratios']): string {
  const known = ratios.filter(({ ratio }) => ratio.value !== null);
  const [first] = known;
  if (first === undefined) {
    return t`Too few groups were counted by you and somebody else to say how your numbers compare.`;
  }
  const off = known.filter(({ ratio }) => isOffLevel(ratio));
  const [most] = off;
  if (most === undefined) {
    return t`Your numbers do not clearly run above or below those of the others who counted the same birds.`;
  }
  const compared = comparedWith(most.ratio.value ?? 1, t`the others who counted the same birds`);
  return t`On average you counted ${compared}. That does not say who was right.`;
}

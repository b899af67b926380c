import { t } from '@lingui/core/macro';
import { Trans } from '@lingui/react/macro';
import type { ReactNode } from 'react';
import type { CountAgreementQuery, MeasuresFragment } from '../graphql/generated/graphql.js';
import { percent } from '../ui/words.js';
import { AgreementSection, OnThisPage, type SectionHead } from './agreement-sections.js';
import { ConfusionPart } from './confusion-part.js';
import { ConsistencyPart } from './consistency-part.js';
import { DetectionPart } from './detection-part.js';
import { IntraclassTable, OverallTable, PairTable, TaxonTable } from './measures-table.js';
import { ObserverRatios } from './observer-ratios.js';
import { RatioPart } from './ratio-part.js';
import { SectionAgreement } from './section-agreement.js';

type Agreement = CountAgreementQuery['count']['review']['agreement'];

/** The whole agreement of a count: pictures first, a sentence under each, then all numbers. */
export function AgreementView(props: {
  readonly agreement: Agreement;
  readonly isLeader: boolean;
}): ReactNode {
  const { agreement, isLeader } = props;
  const { minimumUnits: least, byPair, bySection, byTaxon, intraclass, detection } = agreement;
  if (byPair.length === 0) {
    return (
      <p className="sentence">
        <Trans>
          No two independent observers counted the same section in the same window, so there is
          nothing to compare. Coverage shows which sections have no second observer.
        </Trans>
      </p>
    );
  }
  const parts: readonly (SectionHead & { readonly content: ReactNode })[] = [
    {
      id: 'ratios',
      short: t`Ratios`,
      title: t`Numbers: ratios of two observers`,
      content: <RatioPart pairs={byPair} least={least} />,
    },
    {
      id: 'names',
      short: t`Names`,
      title: t`Names: what birds were called`,
      content: <ConfusionPart all={agreement.confusion} pairs={byPair} least={least} />,
    },
    ...(isLeader
      ? [
          {
            id: 'observers',
            short: t`Observers`,
            title: t`Observers beside those who counted the same`,
            content: (
              <ObserverRatios
                model={agreement.observerModel ?? null}
                ratios={agreement.observers}
                least={least}
              />
            ),
          },
        ]
      : []),
    {
      id: 'sections',
      short: t`Sections`,
      title: t`Section by section`,
      content: <SectionAgreement rows={bySection} least={least} />,
    },
    {
      id: 'overall',
      short: t`Overall`,
      title: t`Overall`,
      content: <OverallTable overall={agreement.overall} least={least} />,
    },
    {
      id: 'pairs',
      short: t`Pairs`,
      title: t`Pair by pair`,
      content: <PairTable pairs={byPair} least={least} />,
    },
    {
      id: 'taxa',
      short: t`Taxa`,
      title: t`Taxon by taxon`,
      content: <TaxonTable rows={byTaxon} least={least} />,
    },
    {
      id: 'intraclass',
      short: t`Intraclass correlation`,
      title: t`Intraclass correlation`,
      content: <IntraclassTable rows={intraclass} least={least} />,
    },
    {
      id: 'missed',
      short: t`Flocks missed`,
      title: t`Estimate beside the count: flocks that were missed`,
      content: <DetectionPart rows={detection} least={least} />,
    },
    ...(isLeader
      ? [
          {
            id: 'apart',
            short: t`Standing apart`,
            title: t`Estimate beside the count: who stands apart`,
            content: <ConsistencyPart sets={agreement.observerConsistency} least={least} />,
          },
        ]
      : []),
  ];
  return (
    <>
      <p className="sentence">{overallSentence(agreement.overall)}</p>
      <OnThisPage parts={parts} />
      {parts.map(({ id, title, content }) => (
        <AgreementSection key={id} id={id} title={title}>
          {content}
        </AgreementSection>
      ))}
    </>
  );
}

/** The one number that says most, and how sure it is. */
function overallSentence(overall: MeasuresFragment): string {
  const { value, low, high } = overall.percentAgreement;
  if (value === null) {
    return t`Too few groups were counted by two independent observers to say how well they agree.`;
  }
  const share = percent(value);
  if (low === null || high === null) {
    return t`Where two independent observers counted the same place, they gave the same name, one for one, to ${share} of the birds.`;
  }
  const [least, most] = [percent(low), percent(high)];
  return t`Where two independent observers counted the same place, they gave the same name, one for one, to ${share} of the birds (likely between ${least} and ${most}).`;
}

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
        No two independent observers counted the same section in the same window, so there is
        nothing to compare. Coverage shows which sections have no second observer.
      </p>
    );
  }
  const parts: readonly (SectionHead & { readonly content: ReactNode })[] = [
    {
      id: 'ratios',
      short: 'Ratios',
      title: 'Numbers: ratios of two observers',
      content: <RatioPart pairs={byPair} least={least} />,
    },
    {
      id: 'names',
      short: 'Names',
      title: 'Names: what birds were called',
      content: <ConfusionPart all={agreement.confusion} pairs={byPair} least={least} />,
    },
    ...(isLeader
      ? [
          {
            id: 'observers',
            short: 'Observers',
            title: 'Observers beside those who counted the same',
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
      short: 'Sections',
      title: 'Section by section',
      content: <SectionAgreement rows={bySection} least={least} />,
    },
    {
      id: 'overall',
      short: 'Overall',
      title: 'Overall',
      content: <OverallTable overall={agreement.overall} least={least} />,
    },
    {
      id: 'pairs',
      short: 'Pairs',
      title: 'Pair by pair',
      content: <PairTable pairs={byPair} least={least} />,
    },
    {
      id: 'taxa',
      short: 'Taxa',
      title: 'Taxon by taxon',
      content: <TaxonTable rows={byTaxon} least={least} />,
    },
    {
      id: 'intraclass',
      short: 'Intraclass correlation',
      title: 'Intraclass correlation',
      content: <IntraclassTable rows={intraclass} least={least} />,
    },
    {
      id: 'missed',
      short: 'Flocks missed',
      title: 'Estimate beside the count: flocks that were missed',
      content: <DetectionPart rows={detection} least={least} />,
    },
    ...(isLeader
      ? [
          {
            id: 'apart',
            short: 'Standing apart',
            title: 'Estimate beside the count: who stands apart',
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
    return 'Too few groups were counted by two independent observers to say how well they agree.';
  }
  const interval =
    low === null || high === null ? '' : ` (likely between ${percent(low)} and ${percent(high)})`;
  return `Where two independent observers counted the same place, they gave the same name, one for one, to ${percent(value)} of the birds${interval}.`;
}

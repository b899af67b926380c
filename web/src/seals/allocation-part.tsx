import { t } from '@lingui/core/macro';
import { Trans } from '@lingui/react/macro';
import type { ReactNode } from 'react';
import type { CompiledCountPageQuery } from '../graphql/generated/graphql.js';
import { Extent } from '../ui/extent.js';
import { TaxonName, readTaxon } from '../ui/taxon.js';
import { birds, listed } from '../ui/words.js';

export type AllocatedSpecies = CompiledCountPageQuery['count']['compiled']['allocation'][number];

/**
 * Pairs and groups shared out among their species: an estimate beside the count. It has a table of
 * its own, and every estimated number carries ≈, so that none is taken for a counted one.
 */
export function AllocationPart(props: {
  readonly allocation: readonly AllocatedSpecies[];
}): ReactNode {
  const shared = props.allocation.filter(({ estimated }) => estimated !== null);
  const notShared = props.allocation.filter(({ estimated }) => estimated === null);
  if (props.allocation.length === 0) return null;
  return (
    <section className="estimate stack" aria-labelledby="allocation-heading">
      <h2 id="allocation-heading">
        <Trans>Estimate, not counted: species behind the pairs and groups</Trans>
      </h2>
      <p>
        <Trans>
          If birds left at a pair or group divide as the identified ones do, there were about this
          many of each species. That takes birds to be as easy to identify whatever they are.
          Nothing here is part of the compiled count, and nothing is added to it.
        </Trans>
      </p>
      {shared.length === 0 ? null : <EstimateTable shared={shared} />}
      {shared.some(({ interval }) => interval === 'bounds') ? (
        <p className="small soft">
          <Trans>* All that is possible: too few places for an interval.</Trans>
        </p>
      ) : null}
      {notShared.length === 0 ? null : <NotShared species={notShared} />}
    </section>
  );
}

/** Species that nothing can be estimated of, with how many of them are possible. */
function NotShared(props: { readonly species: readonly AllocatedSpecies[] }): ReactNode {
  const possible = listed(
    props.species.map(({ species, low, high }) => {
      const name = readTaxon(species).common;
      const [least, most] = [birds(low), birds(high)];
      return t`${name} ${least} to ${most}`;
    }),
  );
  return (
    <p>
      <Trans>
        No estimate, since some species of the pair or group was never identified by itself, or
        observers named the birds differently; only how many are possible: {possible}.
      </Trans>
    </p>
  );
}

function EstimateTable(props: { readonly shared: readonly AllocatedSpecies[] }): ReactNode {
  return (
    <div className="wide" role="region" aria-label={t`Estimate by species`} tabIndex={0}>
      <table>
        <caption className="for-readers">
          <Trans>Estimate by species, beside the compiled count and not part of it</Trans>
        </caption>
        <thead>
          <tr>
            <th scope="col">
              <Trans>Species</Trans>
            </th>
            <th scope="col" className="number">
              <Trans>Counted as it</Trans>
            </th>
            <th scope="col" className="number">
              <Trans>Estimated, with 95 % interval</Trans>
            </th>
            <th scope="col">
              <span className="for-readers">
                <Trans>Drawn</Trans>
              </span>
            </th>
            <th scope="col" className="number">
              <Trans>Not shared out</Trans>
            </th>
          </tr>
        </thead>
        <tbody>
          {props.shared.map((each) => (
            <tr key={each.species}>
              <th scope="row">
                <TaxonName taxon={each.species} />
                <span className="block small soft">{shareWords(each)}</span>
              </th>
              <td className="number">{birds(each.identified)}</td>
              <td className="number">
                <span className="estimated-number">{about(each.estimated ?? 0)}</span>
                <span className="block small soft">
                  {about(each.low)}–{birds(each.high)}
                  {each.interval === 'bounds' ? ' *' : ''}
                </span>
              </td>
              <td>
                <Extent
                  number={each.estimated ?? 0}
                  low={each.low}
                  high={each.high}
                  atLeast={each.identified}
                  atMost={each.of.reduce((sum, { number }) => sum + number, each.identified)}
                />
              </td>
              <td className="number">
                {each.undetermined === 0 ? (
                  <span className="soft">–</span>
                ) : (
                  birds(each.undetermined)
                )}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

/** The mark of an estimate does not part from its number. */
function about(number: number): string {
  return `≈\u00a0${birds(number)}`;
}

/** `≈ 2,390 of 2,955 Greater/Lesser Scaup`, for each pair or group that was shared out. */
function shareWords({ of }: AllocatedSpecies): string {
  return listed(
    of.flatMap(({ taxon, number, estimated }) => {
      if (estimated === null) return [];
      const [share, whole, name] = [about(estimated), birds(number), readTaxon(taxon).common];
      return [t`${share} of ${whole} ${name}`];
    }),
  );
}

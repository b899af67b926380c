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
      <h2 id="allocation-heading">Estimate, not counted: species behind the pairs and groups</h2>
      <p>
        If birds left at a pair or group divide as the identified ones do, there were about this
        many of each species. That takes birds to be as easy to identify whatever they are. Nothing
        here is part of the compiled count, and nothing is added to it.
      </p>
      {shared.length === 0 ? null : <EstimateTable shared={shared} />}
      {shared.some(({ interval }) => interval === 'bounds') ? (
        <p className="small soft">* All that is possible: too few places for an interval.</p>
      ) : null}
      {notShared.length === 0 ? null : (
        <p>
          No estimate, since some species of the pair or group was never identified by itself, or
          observers named the birds differently; only how many are possible:{' '}
          {listed(
            notShared.map(
              ({ species, low, high }) =>
                `${readTaxon(species).common} ${birds(low)} to ${birds(high)}`,
            ),
          )}
          .
        </p>
      )}
    </section>
  );
}

function EstimateTable(props: { readonly shared: readonly AllocatedSpecies[] }): ReactNode {
  return (
    <div className="wide" role="region" aria-label="Estimate by species" tabIndex={0}>
      <table>
        <caption className="for-readers">
          Estimate by species, beside the compiled count and not part of it
        </caption>
        <thead>
          <tr>
            <th scope="col">Species</th>
            <th scope="col" className="number">
              Counted as it
            </th>
            <th scope="col" className="number">
              Estimated, with 95 % interval
            </th>
            <th scope="col">
              <span className="for-readers">Drawn</span>
            </th>
            <th scope="col" className="number">
              Not shared out
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
    of.flatMap(({ taxon, number, estimated }) =>
      estimated === null
        ? []
        : [`${about(estimated)} of ${birds(number)} ${readTaxon(taxon).common}`],
    ),
  );
}

import type { ReactNode } from 'react';
import { parseTaxon } from '../../../server/core/taxa/parse-taxon.js';
import { englishName, taxonName } from '../../../server/core/taxa/taxon-name.js';

export interface ReadTaxon {
  /** As it is compiled: a scientific name, a pair, or a group. */
  readonly name: string;
  readonly english: string;
}

/** A taxon text as it is shown: in English, with the scientific name at hand. */
export function readTaxon(taxon: string): ReadTaxon {
  const parsed = parseTaxon(taxon);
  return parsed.ok
    ? { name: taxonName(parsed.candidates), english: englishName(parsed.candidates) }
    : { name: taxon, english: taxon };
}

/** English name, scientific name below it where the two differ. */
export function TaxonName(props: { readonly taxon: string }): ReactNode {
  const { name, english } = readTaxon(props.taxon);
  return (
    <>
      {english}
      {english === name ? null : <span className="taxon soft small taxon-below"> {name}</span>}
    </>
  );
}

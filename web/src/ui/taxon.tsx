import type { ReactNode } from 'react';
import type { Species } from '../../../server/core/model/snapshot.js';
import { parseTaxon } from '../../../server/core/taxa/parse-taxon.js';
import * as taxa from '../../../server/core/taxa/taxon-name.js';
import { language } from './language.js';

export interface ReadTaxon {
  /** As it is compiled: a scientific name, a pair, or a group. */
  readonly name: string;
  /** In the language of the pages. */
  readonly common: string;
}

/** A candidate set by its common name in the language of the pages. */
export function commonName(candidates: readonly Species[]): string {
  return taxa.commonName(candidates, language());
}

/** A taxon text as it is shown: by its common name, with the scientific name at hand. */
export function readTaxon(taxon: string): ReadTaxon {
  const parsed = parseTaxon(taxon);
  return parsed.ok
    ? { name: taxa.taxonName(parsed.candidates), common: commonName(parsed.candidates) }
    : { name: taxon, common: taxon };
}

/** The common name, the scientific name below it where the two differ. */
export function TaxonName(props: { readonly taxon: string }): ReactNode {
  const { name, common } = readTaxon(props.taxon);
  return (
    <>
      {common}
      {common === name ? null : <span className="taxon soft small taxon-below"> {name}</span>}
    </>
  );
}

import type { Agreement, AgreementMeasures, PairAgreement } from '../model/agreement.js';
import type { Protocol } from '../model/protocol.js';
import type { Cell } from '../model/result.js';
import { comparedTaxa, comparedUnits, type ComparedUnit } from './compared-units.js';
import { confusionOfAll, confusionOfPair } from './confusion-table.js';
import { detectionOf } from './detection/detection-of.js';
import type { FlocksInField } from './detection/matched-flocks.js';
import { fullTotals } from './full-totals.js';
import { intraclassSets } from './intraclass-sets.js';
import { measuresOf, numberMeasuresOf } from './measures-of.js';
import { observerConsistencyOf, observerModelOf } from './observer-model.js';
import { observerRatios } from './observer-ratios.js';
import { ratioPlotOf } from './ratio-plot.js';
import { sensitivitiesOf, sensitivityOf } from './sensitivity.js';

const NO_FLOCKS: FlocksInField = { matched: new Map(), standing: new Map() };

/**
 * Agreement of observers over a count: overall, by pair of observers, by taxon, by section, and how
 * each observer stands to the others (method section 4).
 *
 * Only birds using the waterbody, and only pairs of tallies that are counted (full) and independent.
 * The unit is a group of a cell; shares are shares of birds from 0 to 1, each with its 95 % interval:
 *
 * - percent agreement: pairs of birds with the same candidate set, of all pairs of birds and birds
 *   that only one observer has;
 * - Bray–Curtis similarity: 1 − Bray & Curtis (1957) over totals of groups, or of the one taxon;
 * - concordance: Lin (1989, 2000) of ln totals that are over 0; one pair of observers by Lin's own
 *   interval, several pooled;
 * - within tolerance: groups whose totals lie within a fifth of each other;
 * - alpha: Krippendorff (2011) of totals, ratio metric;
 * - kappa: Cohen (1960) of the taxa given to birds that both saw, whatever their level: a pair or
 *   group is a name of its own; beside it weighted by overlap of candidate sets, and adjusted for
 *   prevalence and bias;
 *
 * with intervals by a bootstrap of whole groups from a fixed seed (`clusterBootstrapIntervals`), as
 * birds of one flock go together. Below the protocol's `minimumUnits` groups, or where a measure is
 * 0/0 (kappa where all birds have one name, concordance where all numbers are equal): no value.
 *
 * @param field flocks matched between observers, for detection; without them it is empty
 */
export function agreementOf(
  cells: readonly Cell[],
  protocol: Protocol,
  field: FlocksInField = NO_FLOCKS,
): Agreement {
  const { minimumUnits } = protocol;
  const units = comparedUnits(cells);
  const taxa = comparedTaxa(cells);
  const totals = fullTotals(cells);
  const measures = measuresOnce(minimumUnits);
  return {
    overall: measures(units),
    byPair: pairsOf(units).map((pair) =>
      pairAgreement(pair, measures(pair.units), taxa, cells, minimumUnits),
    ),
    byTaxon: [...taxa.keys()].sort().map((taxon) => ({
      taxon,
      ...numberMeasuresOf(taxa.get(taxon) ?? [], minimumUnits),
      sensitivity: sensitivityOf(taxon, taxa.get(taxon) ?? [], minimumUnits),
    })),
    bySection: bySection(units, cells).map(({ place, units: there }) => ({
      place,
      ...measures(there),
    })),
    observers: observerRatios(units, minimumUnits),
    observerModel: observerModelOf(totals, minimumUnits),
    observerConsistency: observerConsistencyOf(totals, minimumUnits),
    intraclass: intraclassSets(totals, minimumUnits),
    confusion: confusionOfAll(cells),
    detection: detectionOf(cells, field, minimumUnits),
  };
}

interface PairOfObservers {
  readonly a: string;
  readonly b: string;
  readonly units: readonly ComparedUnit[];
}

function pairsOf(units: readonly ComparedUnit[]): PairOfObservers[] {
  const byPair = new Map<string, { a: string; b: string; units: ComparedUnit[] }>();
  for (const unit of units) {
    const key = `${unit.a}\n${unit.b}`;
    const pair = byPair.get(key) ?? { a: unit.a, b: unit.b, units: [] };
    pair.units.push(unit);
    byPair.set(key, pair);
  }
  return [...byPair.keys()].sort().flatMap((key) => byPair.get(key) ?? []);
}

function pairAgreement(
  { a, b, units }: PairOfObservers,
  measures: AgreementMeasures,
  taxa: ReadonlyMap<string, readonly ComparedUnit[]>,
  cells: readonly Cell[],
  minimumUnits: number,
): PairAgreement {
  const ofPair = new Map(
    [...taxa].map(([taxon, each]) => [taxon, each.filter((unit) => unit.a === a && unit.b === b)]),
  );
  return {
    a,
    b,
    ...measures,
    ratios: ratioPlotOf(units, minimumUnits),
    confusion: confusionOfPair(cells, a, b),
    sensitivities: sensitivitiesOf(ofPair, minimumUnits),
  };
}

/** Cells of one place, whatever the window, together; sorted by place. */
function bySection(
  units: readonly ComparedUnit[],
  cells: readonly Cell[],
): { place: readonly string[]; units: readonly ComparedUnit[] }[] {
  const placeOf = new Map(cells.map(({ id, place }) => [id, place]));
  const byPlace = new Map<string, { place: readonly string[]; units: ComparedUnit[] }>();
  for (const unit of units) {
    const place = placeOf.get(unit.cell) ?? [];
    const entry = byPlace.get(place.join('\n')) ?? { place, units: [] };
    entry.units.push(unit);
    byPlace.set(place.join('\n'), entry);
  }
  return [...byPlace.keys()].sort().flatMap((key) => byPlace.get(key) ?? []);
}

/** Where two observers counted one section and no other, pair and section are the same units. */
function measuresOnce(minimumUnits: number): (units: readonly ComparedUnit[]) => AgreementMeasures {
  const known = new Map<string, AgreementMeasures>();
  return (units) => {
    const key = units.map(({ cluster, a, b }) => JSON.stringify([cluster, a, b])).join();
    const found = known.get(key) ?? measuresOf(units, minimumUnits);
    known.set(key, found);
    return found;
  };
}

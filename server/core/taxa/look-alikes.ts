import type { Species } from '../model/snapshot.js';

type Pair = readonly [Species, Species];

/** Every pair of a list. */
function everyPair(species: readonly Species[]): readonly Pair[] {
  return species.flatMap((one, index) =>
    species.slice(index + 1).map((other): Pair => (one < other ? [one, other] : [other, one])),
  );
}

/**
 * Species that observers confuse in winter (common practice, no source): the look-alike groups
 * that have a field-mark key. Pochards: every pair but canvasback with the two scaup and with
 * ring-necked duck, since a canvasback is long and wedge-headed.
 */
const GROUPS: readonly (readonly Species[])[] = [
  ['Aythya affinis', 'Aythya americana', 'Aythya collaris', 'Aythya marila'],
  ['Aythya americana', 'Aythya valisineria'],
  ['Bucephala clangula', 'Bucephala islandica'],
  ['Lophodytes cucullatus', 'Mergus merganser', 'Mergus serrator'],
  ['Somateria mollissima', 'Somateria spectabilis'],
  ['Melanitta americana', 'Melanitta deglandi', 'Melanitta perspicillata'],
  ['Cygnus buccinator', 'Cygnus columbianus', 'Cygnus olor'],
  ['Branta canadensis', 'Branta hutchinsii'],
  ['Anser caerulescens', 'Anser rossii'],
  ['Podiceps auritus', 'Podiceps nigricollis'],
  ['Podiceps auritus', 'Podiceps grisegena'],
  ['Aechmophorus clarkii', 'Aechmophorus occidentalis'],
  ['Anas crecca', 'Spatula cyanoptera', 'Spatula discors'],
  ['Spatula clypeata', 'Spatula cyanoptera', 'Spatula discors'],
  ['Anas acuta', 'Anas platyrhynchos', 'Anas rubripes', 'Mareca strepera'],
  ['Anas platyrhynchos', 'Spatula clypeata'],
  ['Mareca americana', 'Mareca strepera'],
];

/** The regional list: each pair sorted, the list sorted, none twice. A protocol may replace it. */
export const DEFAULT_LOOK_ALIKES: readonly Pair[] = [
  ...new Map(GROUPS.flatMap(everyPair).map((pair) => [pair.join('/'), pair])),
]
  .sort(([one], [other]) => (one < other ? -1 : one > other ? 1 : 0))
  .map(([, pair]) => pair);

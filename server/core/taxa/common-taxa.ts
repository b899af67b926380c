/**
 * Offered on buttons before anything has been entered: birds met on most northern lakes in January
 * (common practice, no source). What the observer enters soon takes their place.
 */
export const COMMON_TAXA: readonly string[] = [
  'Anas platyrhynchos',
  'Branta canadensis',
  'Anas rubripes',
  'Bucephala clangula',
  'Mergus merganser',
  'Aythya marila',
  'Aythya affinis',
  'Aythya affinis/marila',
  'Aythya americana',
  'Aythya valisineria',
  'Bucephala albeola',
  'Cygnus olor',
];

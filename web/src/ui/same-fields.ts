/** Whether two records of the same fields have the very same values, those of some fields aside. */
export function sameFields<Fields extends object>(
  one: Fields,
  other: Fields,
  ...aside: readonly (keyof Fields)[]
): boolean {
  return Object.entries(one).every(([key, value]) => {
    const field = key as keyof Fields;
    return aside.includes(field) || value === other[field];
  });
}

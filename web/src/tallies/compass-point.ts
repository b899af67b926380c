const points = [
  ['N', 'north'],
  ['NNE', 'north-north-east'],
  ['NE', 'north-east'],
  ['ENE', 'east-north-east'],
  ['E', 'east'],
  ['ESE', 'east-south-east'],
  ['SE', 'south-east'],
  ['SSE', 'south-south-east'],
  ['S', 'south'],
  ['SSW', 'south-south-west'],
  ['SW', 'south-west'],
  ['WSW', 'west-south-west'],
  ['W', 'west'],
  ['WNW', 'west-north-west'],
  ['NW', 'north-west'],
  ['NNW', 'north-north-west'],
] as const;

/** The nearest of the compass's sixteen points: 45 → `NE`, `north-east`. */
export function compassPoint(degrees: number): { readonly short: string; readonly long: string } {
  const sixteenth = Math.round(degrees / 22.5);
  const [short, long] = points[((sixteenth % 16) + 16) % 16] ?? points[0];
  return { short, long };
}

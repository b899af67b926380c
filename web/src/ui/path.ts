/**
 * Paths of pages. Ids may hold any character; they are encoded twice because the router decodes the
 * address once before it matches it.
 */
export function pathOf(...parts: readonly string[]): string {
  return `/${parts.map((part) => encodeURIComponent(encodeURIComponent(part))).join('/')}`;
}

/** The id in a matched part of a path. */
export function idFromPath(part: string): string {
  try {
    return decodeURIComponent(part);
  } catch {
    return part;
  }
}

/**
 * Puts everything that the first page needs into one file: many small files cost a slow phone more than their bytes do.
 *
 * @param {string} main the file that the first page begins with
 * @returns {(id: string, context: import('vite').Rolldown.ChunkingContext) => string | null} names the file that a module goes into;
 *   `null` leaves it to the bundler
 */
export function firstFiles(main) {
  /** @type {ReadonlySet<string> | null} */
  let first = null;
  return (id, context) => {
    first ??= reachedFrom(main, context);
    return first.has(id) ? 'first' : null;
  };
}

/**
 * All modules that are imported, directly or not, before the first line of a module is run.
 *
 * @param {string} main
 * @param {import('vite').Rolldown.ChunkingContext} context
 * @returns {ReadonlySet<string>}
 */
function reachedFrom(main, context) {
  const reached = new Set([main]);
  for (const id of reached) {
    for (const imported of context.getModuleInfo(id)?.importedIds ?? []) reached.add(imported);
  }
  return reached;
}

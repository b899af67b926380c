/*
 * How long finding links takes on a large count: about 2,000 sightings on 24 sections. Run by hand:
 *   npx rolldown tests/bench/link-speed.ts --platform node --file dist/bench/link-speed.js
 *   node dist/bench/link-speed.js
 * The first run of each is what a compiler waits for; later ones are faster, as code is compiled by then.
 */
import { withSampleErrors } from '../../server/core/compare/sample-error.js';
import { findLinks } from '../../server/core/link/find-links.js';
import { sightingsOf } from '../../server/core/link/sightings.js';
import { simulate } from '../../server/core/simulate/simulate.js';
import { cellsOf } from './double-count-run.js';
import { optionsFor, protocol, SETTINGS } from './double-count-settings.js';

const RUNS = 3;
const LARGE = { sections: 24, observers: 24, birds: 103_000 };

console.log('seconds and, in brackets, seconds of processor time; goal: 2,000 sightings in 2 s');
for (const setting of SETTINGS.filter(({ name }) => name.startsWith('usual'))) {
  const { snapshot: asCounted } = simulate({ ...optionsFor(setting, 7), ...LARGE }, protocol);
  const snapshot = withSampleErrors(asCounted, protocol);
  const cellOf = cellsOf(snapshot);
  const sightings = sightingsOf(snapshot, cellOf, protocol).length;
  const runs = Array.from({ length: RUNS }, () => {
    const [started, used] = [performance.now(), process.cpuUsage()];
    const links = findLinks(snapshot, cellOf, protocol).length;
    const { user, system } = process.cpuUsage(used);
    return { links, wall: (performance.now() - started) / 1e3, busy: (user + system) / 1e6 };
  });
  const times = runs.map(({ wall, busy }) => `${wall.toFixed(2)} (${busy.toFixed(2)})`).join('  ');
  console.log(`${setting.name}: ${sightings} sightings, ${runs[0]?.links ?? 0} links: ${times}`);
}

/*
 * How well double counting is found on made-up mornings whose truth is known. Run by hand:
 *   npx rolldown tests/bench/links.ts --platform node --file dist/bench/links.js && node dist/bench/links.js
 */
import { scoreMornings, simulateMorning, type Notes } from '../core/link/simulated-morning.js';

const MORNINGS = 40;

const settings: [name: string, flocks: number, notes: Notes][] = [
  ['all noted', 50, { time: 1, position: 1, heading: 0.9, destination: 0.5 }],
  ['time and position', 50, { time: 1, position: 1, heading: 0, destination: 0 }],
  ['as people do', 50, { time: 0.7, position: 0.6, heading: 0.5, destination: 0.25 }],
  ['time only', 50, { time: 1, position: 0, heading: 0, destination: 0 }],
  ['as people do, crowded', 120, { time: 0.7, position: 0.6, heading: 0.5, destination: 0.25 }],
];

const percent = (part: number, whole: number) =>
  whole === 0 ? '–' : `${Math.round((100 * part) / whole)} %`;

for (const [name, flocks, notes] of settings) {
  const mornings = Array.from({ length: MORNINGS }, (_, seed) =>
    simulateMorning(seed + 1, flocks, notes),
  );
  const started = performance.now();
  const score = scoreMornings(mornings);
  const each = (performance.now() - started) / MORNINGS;
  console.log(`\n${name}: ${flocks} flocks, ${MORNINGS} mornings, ${each.toFixed(0)} ms each`);
  console.log(
    `  proposed ${score.proposed}: precision ${percent(score.proposedRight, score.proposed)}, recall ${percent(score.proposedRight, score.trueLinks)} of ${score.trueLinks}`,
  );
  console.log(
    `  shown ${score.shown}: precision ${percent(score.shownRight, score.shown)}, recall ${percent(score.shownRight, score.trueLinks)}`,
  );
  console.log(
    `  birds counted twice ${score.birdsTwice}; proposals take off ${score.birdsTakenRightly} rightly, ${score.birdsTakenWrongly} wrongly`,
  );
  const bins = score.bins.map(
    ({ shown, right, expected }) =>
      `${percent(expected, shown)}→${percent(right, shown)} (${shown})`,
  );
  console.log(`  said→true by tenths: ${bins.join('  ')}`);
}

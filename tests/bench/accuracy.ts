/*
 * How near the compiled count comes to the truth on simulated counts, held against the project's
 * goals. Run by hand (half an hour); a number of counts (200 by default) and a part of a setting's
 * name may be given:
 *   npx rolldown tests/bench/accuracy.ts --platform node --file dist/bench/accuracy.js && node dist/bench/accuracy.js
 * The generating model and its figures: server/core/simulate/model.ts.
 */
import { accuracyOf, SETTINGS, type Accuracy } from './accuracy-run.js';
import { accuracyTable, goalsTable } from './accuracy-table.js';

const counts = Number(process.argv[2] ?? 200);
const only = process.argv[3];
const measured: [string, Accuracy][] = [];

for (const setting of SETTINGS) {
  if (only !== undefined && !setting.name.includes(only)) continue;
  const started = performance.now();
  const accuracy = accuracyOf(setting, counts);
  const each = (performance.now() - started) / counts;
  console.log(
    `\n${setting.name}: ${counts} counts, seeds 1 to ${counts}, ${each.toFixed(0)} ms each`,
  );
  console.log(accuracyTable(accuracy));
  measured.push([setting.name, accuracy]);
}

console.log(`\n${goalsTable(measured)}`);

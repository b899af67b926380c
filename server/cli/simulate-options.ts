import { Option, type Command } from 'commander';
import { RULES } from '../core/model/protocol.js';
import { DEFAULT_OPTIONS, METHOD_MIXES, type SimulationOptions } from '../core/simulate/options.js';
import type { ExitCode, Streams } from './exit-codes.js';
import { simulateFolder, type SimulateOptions } from './simulate.js';

type NumberKey = Exclude<keyof SimulationOptions, 'seed' | 'methods'>;

/** In the order in which help shows them. */
const NUMBERS: readonly (readonly [flag: string, key: NumberKey, about: string])[] = [
  ['--sections <n>', 'sections', 'sections of the lake'],
  ['--observers <n>', 'observers', 'observers'],
  ['--per-section <n>', 'perSection', 'counts of every section'],
  ['--birds <n>', 'birds', 'birds that use the lake'],
  ['--bias <ratio>', 'bias', 'median number written for each true bird; 0.71 is 29 % low'],
  ['--observer-spread <cv>', 'observerSpread', "coefficient of variation of observers' own ratios"],
  ['--detection <p>', 'detection', 'chance to find a pair at 500 m'],
  ['--error <factor>', 'error', "multiplies the protocol's counting error"],
  ['--misidentified <factor>', 'misidentified', 'multiplies the chance of misidentification'],
  ['--left-coarse <factor>', 'leftCoarse', 'multiplies the habit of leaving birds at a pair'],
  ['--placing <factor>', 'placing', 'multiplies the error of placing flocks'],
  ['--moving <share>', 'moving', 'share of flocks that move'],
  ['--slips <share>', 'slips', 'share of lines halved or doubled by a slip'],
  ['--partial <share>', 'partial', 'share of tallies that saw only a part of their section'],
  ['--merged <share>', 'merged', 'share of neighbouring sections that one observer tallies as one'],
  ['--parties <share>', 'parties', 'share of sections where two observers count together'],
  ['--times-noted <p>', 'timesNoted', 'chance that the time of a flock is noted'],
  ['--positions-noted <p>', 'positionsNoted', 'chance that the position of a flock is noted'],
  ['--headings-noted <p>', 'headingsNoted', 'chance that the heading of a swimming flock is noted'],
  [
    '--destinations-noted <p>',
    'destinationsNoted',
    'chance that the section it makes for is noted',
  ],
  ['--past-the-line <share>', 'pastTheLine', 'share of observers who tally past their section too'],
  [
    '--splitting <share>',
    'splitting',
    'share of moving flocks that leave in part, or join another',
  ],
  ['--lumping <share>', 'lumping', 'share of tallies with one total a taxon, not flock by flock'],
];

/** Adds `countersign simulate` to the program. */
export function addSimulate(
  program: Command,
  streams: Streams,
  ended: (code: ExitCode) => void,
): void {
  const command = program
    .command('simulate')
    .description(
      'make up a count with its truth (truth.json); the model: server/core/simulate/model.ts',
    )
    .addOption(
      new Option('--seed <n>', 'whole number; the same seed gives the same count')
        .argParser(Number)
        .makeOptionMandatory(),
    )
    .requiredOption('--out <folder>', 'a new folder to write to')
    .addOption(
      new Option('--methods <mix>', 'all count alike, or each by a habit of the own')
        .choices(METHOD_MIXES)
        .default(DEFAULT_OPTIONS.methods),
    )
    .addOption(
      new Option('--rule <rule>', "the protocol's rule").choices(RULES).default('random-effects'),
    );
  for (const [flag, key, about] of NUMBERS) {
    command.addOption(new Option(flag, about).argParser(Number).default(DEFAULT_OPTIONS[key]));
  }
  command.action(async (options: SimulateOptions) => {
    ended(await simulateFolder(options, streams));
  });
}

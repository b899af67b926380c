import { Command, CommanderError, Option } from 'commander';
import { AGREE_FORMATS, agree, type AgreeOptions } from './agree.js';
import { check } from './check.js';
import { ERROR_TABLE_FORMATS, errorTable, type ErrorTableOptions } from './error-table.js';
import { EXIT, type ExitCode, type Streams } from './exit-codes.js';
import { OUTPUT_FORMATS, reconcileFolder, type ReconcileOptions } from './reconcile.js';
import { migrateDatabase, serveUntilStopped } from './serve.js';
import { SCORE_FORMATS, scoreFolder, type ScoreOptions } from './score.js';
import { addSimulate } from './simulate-options.js';

/**
 * Runs the command line.
 *
 * @param args what stands after `countersign`.
 * @returns the exit code: 0 done, 1 faults in what was given, 2 unreadable or not understood;
 *   `null` where a server goes on running.
 */
export async function runCommand(
  args: readonly string[],
  streams: Streams,
): Promise<ExitCode | null> {
  let code: ExitCode | null = EXIT.clean;
  const program = new Command('countersign')
    .description("Turns several observers' counts of one waterbody into one compiled count.")
    .exitOverride()
    .configureOutput({ writeOut: streams.out, writeErr: streams.err });

  program
    .command('reconcile')
    .description('compare, settle and compile the tallies of a count folder')
    .argument('<folder>', 'the count folder')
    .option('--rulings <file>', 'rulings to apply, a JSON list')
    .option('--out <file>', 'write to a file instead of the terminal')
    .addOption(
      new Option('--format <format>', 'how to write the result')
        .choices(OUTPUT_FORMATS)
        .default('json'),
    )
    .action(async (folder: string, options: ReconcileOptions) => {
      code = await reconcileFolder(folder, options, streams);
    });

  program
    .command('check')
    .description('say everything that is wrong with a count folder')
    .argument('<folder>', 'the count folder')
    .action(async (folder: string) => {
      code = await check(folder, streams);
    });

  program
    .command('agree')
    .description(
      'say how well the observers of a count agree, with observers held against each other',
    )
    .argument('<folder>', 'the count folder')
    .addOption(
      new Option('--format <format>', 'how to write the statistics')
        .choices(AGREE_FORMATS)
        .default('text'),
    )
    .action(async (folder: string, options: AgreeOptions) => {
      code = await agree(folder, options, streams);
    });

  addSimulate(program, streams, (ended) => {
    code = ended;
  });

  program
    .command('score')
    .description('reconcile a count and hold it against its truth (truth.json)')
    .argument('<folder>', 'the count folder')
    .addOption(
      new Option('--format <format>', 'how to write the score')
        .choices(SCORE_FORMATS)
        .default('text'),
    )
    .action(async (folder: string, options: ScoreOptions) => {
      code = await scoreFolder(folder, options, streams);
    });

  program
    .command('error-table')
    .description('show the counting error of the protocol beside that of paired tallies')
    .argument('<folders...>', 'count folders of one survey')
    .addOption(
      new Option('--format <format>', 'how to write the table')
        .choices(ERROR_TABLE_FORMATS)
        .default('text'),
    )
    .action(async (folders: readonly string[], options: ErrorTableOptions) => {
      code = await errorTable(folders, options, streams);
    });

  program
    .command('serve')
    .description('run the server; it is set by PORT, HOST, DATABASE_URL (file:…) and FIRST_LEADER')
    .option('--demo', 'with the invented demonstration count, in a database of its own', false)
    .action(async (options: { readonly demo: boolean }) => {
      code = await serveUntilStopped(options, streams);
    });

  program
    .command('migrate')
    .description('bring the database of DATABASE_URL up to date')
    .action(async () => {
      code = await migrateDatabase(streams);
    });

  try {
    await program.parseAsync(args, { from: 'user' });
  } catch (error) {
    if (!(error instanceof CommanderError)) throw error;
    return error.exitCode === 0 ? EXIT.clean : EXIT.unreadable;
  }
  return code;
}

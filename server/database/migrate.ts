import { mkdir, readdir, readFile } from 'node:fs/promises';
import path from 'node:path';
import type { MigrationDirectory } from '@prisma/schema-engine-wasm/schema_engine_bg';
import { PROJECT_ROOT } from '../project-root.js';
import { openSchemaEngine } from './schema-engine.js';

const MIGRATIONS = path.join(PROJECT_ROOT, 'prisma', 'migrations');

/** Nothing is left out: every table belongs to the migrations. */
export const EVERY_TABLE = { externalTables: [], externalEnums: [] };

/**
 * Brings a database up to date: applies the migrations that it has not had, in order.
 *
 * @param url `file:…`; folder and file are made if they are not there
 * @returns the names of the migrations applied now
 */
export async function migrate(url: string): Promise<readonly string[]> {
  await mkdir(path.dirname(path.resolve(url.replace(/^file:/, ''))), { recursive: true });
  const { engine, close } = await openSchemaEngine(url);
  try {
    const { appliedMigrationNames } = await engine.applyMigrations({
      migrationsList: {
        baseDir: MIGRATIONS,
        lockfile: {
          path: 'migration_lock.toml',
          content: await readFile(path.join(MIGRATIONS, 'migration_lock.toml'), 'utf8'),
        },
        shadowDbInitScript: '',
        migrationDirectories: await migrationDirectories(),
      },
      filters: EVERY_TABLE,
    });
    return appliedMigrationNames;
  } finally {
    await close();
  }
}

async function migrationDirectories(): Promise<MigrationDirectory[]> {
  const entries = await readdir(MIGRATIONS, { withFileTypes: true });
  const names = entries.filter((entry) => entry.isDirectory()).map((entry) => entry.name);
  return Promise.all(
    names.sort().map(async (name) => ({
      path: name,
      migrationFile: {
        path: 'migration.sql',
        content: {
          tag: 'ok' as const,
          value: await readFile(path.join(MIGRATIONS, name, 'migration.sql'), 'utf8'),
        },
      },
    })),
  );
}

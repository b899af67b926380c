import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import Sqlite from 'better-sqlite3';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { EVERY_TABLE, migrate } from '../../server/database/migrate.js';
import { openSchemaEngine, schemaFile } from '../../server/database/schema-engine.js';

let folder: string;
let url: string;

beforeAll(async () => {
  folder = await mkdtemp(path.join(tmpdir(), 'countersign-migrations-'));
  url = `file:${path.join(folder, 'fresh.db')}`;
});

afterAll(() => rm(folder, { recursive: true, force: true }));

describe('migrations', () => {
  it('are applied once, in order', async () => {
    const first = await migrate(url);
    const second = await migrate(url);

    expect(first.length).toBeGreaterThan(0);
    expect(first).toEqual([...first].sort());
    expect(second).toEqual([]);
  });

  it('give the very tables that schema.prisma describes', async () => {
    const schema = await schemaFile();
    const { engine, close } = await openSchemaEngine(url);
    const difference = await engine.diff({
      from: { tag: 'schemaDatasource', files: [schema], configDir: folder },
      to: { tag: 'schemaDatamodel', files: [schema] },
      script: true,
      exitCode: true,
      filters: EVERY_TABLE,
    });
    await close();

    expect(difference.stdout).toContain('empty migration');
    expect(difference.exitCode).toBe(0);
  });

  it('make every table STRICT', () => {
    const database = new Sqlite(url.replace('file:', ''), { readonly: true });
    const loose = database
      .prepare(
        "SELECT name FROM pragma_table_list WHERE type = 'table' AND strict = 0 AND name NOT LIKE 'sqlite_%'",
      )
      .pluck()
      .all();
    database.close();

    expect(loose).toEqual(['_prisma_migrations']);
  });
});

import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import path from 'node:path';
import { PrismaBetterSqlite3 } from '@prisma/adapter-better-sqlite3';
import {
  bindMigrationAwareSqlAdapterFactory,
  type SqlDriverAdapter,
  type SqlMigrationAwareDriverAdapterFactory,
} from '@prisma/driver-adapter-utils';
import * as engine from '@prisma/schema-engine-wasm/schema_engine_bg';
import type { SchemaEngine } from '@prisma/schema-engine-wasm/schema_engine_bg';
import { PROJECT_ROOT } from '../project-root.js';

// Node has it; its type declarations (and TypeScript's, outside the browser's) do not.
declare const WebAssembly: {
  instantiate(
    bytes: Uint8Array,
    imports: Readonly<Record<string, object>>,
  ): Promise<{ instance: { exports: Readonly<Record<string, unknown>> } }>;
};

/** prisma/schema.prisma in the form that the engine takes. */
export async function schemaFile(): Promise<{ path: string; content: string }> {
  const file = path.join(PROJECT_ROOT, 'prisma', 'schema.prisma');
  return { path: 'schema.prisma', content: await readFile(file, 'utf8') };
}

/** An engine with its own connection, which has to be closed: the engine locks the file while it lives. */
export interface OpenSchemaEngine {
  readonly engine: SchemaEngine;
  readonly close: () => Promise<void>;
}

/**
 * Prisma's schema engine as WebAssembly, working on one SQLite file. (The command-line engine is a
 * binary that would have to be fetched from a host of its own; this one comes with the packages.)
 *
 * @param url `file:…` of the database, made if it is not there
 */
export async function openSchemaEngine(url: string): Promise<OpenSchemaEngine> {
  await loadWebAssembly();
  const schema = await schemaFile();
  const sqlite = new PrismaBetterSqlite3({ url });
  const connections: SqlDriverAdapter[] = [];
  const kept = async (connection: Promise<SqlDriverAdapter>): Promise<SqlDriverAdapter> => {
    connections.push(await connection);
    return connection;
  };
  const factory: SqlMigrationAwareDriverAdapterFactory = {
    provider: sqlite.provider,
    adapterName: sqlite.adapterName,
    connect: () => kept(sqlite.connect()),
    connectToShadowDb: () => kept(sqlite.connectToShadowDb()),
  };
  const opened = await engine.SchemaEngine.new(
    { datamodels: [[schema.path, schema.content]] },
    () => undefined,
    bindMigrationAwareSqlAdapterFactory(factory),
  );
  return {
    engine: opened,
    close: async () => {
      opened.free();
      await Promise.all(connections.map((connection) => connection.dispose()));
    },
  };
}

let loading: Promise<void> | undefined;

/** Once a process: a second start would leave engines made before it without their memory. */
function loadWebAssembly(): Promise<void> {
  loading ??= startWebAssembly();
  return loading;
}

async function startWebAssembly(): Promise<void> {
  const glue = createRequire(import.meta.url).resolve(
    '@prisma/schema-engine-wasm/schema_engine_bg',
  );
  const bytes = await readFile(path.join(path.dirname(glue), 'schema_engine_bg.wasm'));
  const { instance } = await WebAssembly.instantiate(bytes, {
    './schema_engine_bg.js': engine,
  });
  engine.__wbg_set_wasm(instance.exports);
  const { __wbindgen_start: start } = instance.exports;
  if (!isFunction(start)) throw new Error('the schema engine has no start function');
  start();
}

function isFunction(value: unknown): value is () => void {
  return typeof value === 'function';
}

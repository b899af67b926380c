import { mkdtemp, readlink, rm } from 'node:fs/promises';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { chromium as engine, type BrowserContext, type Page } from 'playwright-core';
import { serve, type RunningServer, type ServeOptions } from '../../server/serve.js';
import { flags, phone } from './browser.mjs';
import { chromium } from './demonstration.js';

/** One server, at one address, that can be stopped for good and started again on the same database. */
export class StoppableServer {
  #running: RunningServer | null = null;

  private constructor(
    private readonly folder: string,
    private readonly port: number,
    private readonly options: Partial<ServeOptions>,
  ) {}

  static async start(options: Partial<ServeOptions>): Promise<StoppableServer> {
    const folder = await mkdtemp(path.join(tmpdir(), 'countersign-offline-'));
    const server = new StoppableServer(folder, await freePort(), options);
    await server.startAgain();
    return server;
  }

  async startAgain(): Promise<void> {
    this.#running = await serve({
      port: this.port,
      databaseUrl: `file:${path.join(this.folder, 'counts.db')}`,
      demo: false,
      print: () => undefined,
      ...this.options,
    });
  }

  get running(): RunningServer {
    if (this.#running === null) throw new Error('The server is stopped.');
    return this.#running;
  }

  get url(): string {
    return `http://localhost:${this.port}`;
  }

  async stop(): Promise<void> {
    await this.#running?.close();
    this.#running = null;
  }

  async remove(): Promise<void> {
    await this.stop();
    await rm(this.folder, { recursive: true, force: true });
  }
}

function freePort(): Promise<number> {
  return new Promise((resolve, reject) => {
    const probe = createServer();
    probe.once('error', reject);
    probe.listen(0, '127.0.0.1', () => {
      const address = probe.address();
      probe.close(() => resolve(typeof address === 'object' && address ? address.port : 0));
    });
  });
}

/** A browser with a profile that outlives it, as on a phone. */
export class Phone {
  #context: BrowserContext | null = null;

  private constructor(private readonly profile: string) {}

  static async unpack(): Promise<Phone> {
    const made = new Phone(await mkdtemp(path.join(tmpdir(), 'countersign-phone-')));
    await made.switchOn();
    return made;
  }

  async switchOn(): Promise<void> {
    this.#context = await engine.launchPersistentContext(this.profile, {
      executablePath: chromium,
      args: flags,
      viewport: phone,
      serviceWorkers: 'allow',
      reducedMotion: 'reduce',
      locale: 'en-CA',
      timezoneId: 'America/Toronto',
    });
  }

  /** Ends the browser and starts it anew on the same profile. */
  async restart(): Promise<void> {
    await this.#context?.close();
    await this.switchOn();
  }

  /** The battery is empty: the browser ends without another word, and is started anew later. */
  async killAndRestart(): Promise<void> {
    const context = this.context;
    const isGone = new Promise<void>((resolve) => context.once('close', () => resolve()));
    // Chromium's lock on a profile is a link to `host-process`; the process leads a group of its own.
    const owner = await readlink(path.join(this.profile, 'SingletonLock'));
    process.kill(-Number(owner.slice(owner.lastIndexOf('-') + 1)), 'SIGKILL');
    await isGone;
    await this.switchOn();
  }

  get context(): BrowserContext {
    if (this.#context === null) throw new Error('The phone is switched off.');
    return this.#context;
  }

  async open(url: string): Promise<Page> {
    const page = await this.context.newPage();
    await page.goto(url);
    return page;
  }

  async throwAway(): Promise<void> {
    await this.#context?.close();
    await rm(this.profile, { recursive: true, force: true });
  }
}

/** Waits until the app's files and the observer's part of a count are on the phone. */
export async function untilReadyForTheShore(page: Page): Promise<void> {
  await page.evaluate(async () => {
    // Active means installed, and installed means that every file is kept.
    await navigator.serviceWorker.ready;
  });
  await page.waitForFunction(
    () =>
      new Promise((resolve) => {
        const opening = indexedDB.open('countersign');
        opening.onerror = () => resolve(false);
        opening.onsuccess = () => {
          const database = opening.result;
          if (!database.objectStoreNames.contains('ownParts')) {
            database.close();
            resolve(false);
            return;
          }
          const counting = database.transaction('ownParts').objectStore('ownParts').count();
          counting.onsuccess = () => {
            database.close();
            resolve(counting.result > 0);
          };
        };
      }),
    undefined,
    { timeout: 60_000, polling: 250 },
  );
}

import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { build } from '../../server/build.mjs';
import { serve, type RunningServer } from '../../server/serve.js';
import { launch, openPage, signIn } from './browser.mjs';

/** Where Chromium is; empty where there is none, and browser tests are skipped. */
export const chromium = process.env['CHROMIUM_PATH'] ?? '';

type SignIn = RunningServer['signIns'][number];

/** A page, what went wrong in it so far, and the servers that it asked for anything. */
export interface OpenPage {
  readonly page: Page;
  readonly troubles: readonly string[];
  readonly fetchedFrom: ReadonlySet<string>;
}

/**
 * The demonstration count on a real server with a port and a database of its own, and a real
 * browser to open it with.
 */
export class Demonstration {
  private constructor(
    private readonly folder: string,
    private readonly server: RunningServer,
    readonly browser: Browser,
  ) {}

  /** Builds the web app if it is out of date; the server runs from its sources. */
  static async start(): Promise<Demonstration> {
    await build(() => undefined, { only: 'web app' });
    const folder = await mkdtemp(path.join(tmpdir(), 'countersign-web-'));
    const server = await serve({
      port: 0,
      databaseUrl: `file:${path.join(folder, 'counts.db')}`,
      demo: true,
      print: () => undefined,
    });
    return new Demonstration(folder, server, await launch(chromium));
  }

  async close(): Promise<void> {
    await this.browser.close();
    await this.server.close();
    await rm(this.folder, { recursive: true, force: true });
  }

  /** Where a page of the app is, or of the count if `page` does not begin with a slash. */
  url(page: string): string {
    return this.server.url + (page.startsWith('/') ? page : `/counts/lake-emberlow/${page}`);
  }

  /** A page of somebody who has not signed in. */
  async open(size: { width: number; height: number }, keepsPages = false): Promise<OpenPage> {
    return openPage(this.browser, size, { keepsPages });
  }

  /** Signs the first of the demonstration's people who is wanted in to a page. */
  async signIn(page: Page, isWanted: (person: SignIn) => boolean): Promise<void> {
    const person = this.server.signIns.find(isWanted);
    if (person === undefined) throw new Error('The demonstration has no such person.');
    await signIn(page, this.server.url, person);
  }
}

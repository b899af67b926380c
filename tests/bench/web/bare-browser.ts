import { spawn } from 'node:child_process';
import type { Readable, Writable } from 'node:stream';
import { findChromium } from '../../support/find-chromium.mjs';
import { flags } from '../../web/browser.mjs';

interface Answer {
  readonly id?: number;
  readonly result?: Readonly<Record<string, unknown>>;
  readonly error?: { readonly message: string };
}

/**
 * A Chromium that is only told to open pages and slow its processor. The usual driver watches each
 * page with the browser's inspector, which takes note of where in the code every request began: in
 * large files that costs as much time as the page itself, on no observer's phone.
 *
 * @param profile folder of a browser that may have been used before
 * @returns `ask` calls a method of the Chrome DevTools Protocol
 */
export function openBareBrowser(profile: string) {
  const running = spawn(
    findChromium() ?? '',
    [...flags, `--user-data-dir=${profile}`, '--remote-debugging-pipe', 'about:blank'],
    { stdio: ['ignore', 'ignore', 'ignore', 'pipe', 'pipe'] },
  );
  const [toBrowser, fromBrowser] = [running.stdio[3] as Writable, running.stdio[4] as Readable];
  const waiting = new Map<number, (answer: Answer) => void>();
  let rest = '';
  fromBrowser.on('data', (data: Buffer) => {
    const messages = (rest + data.toString()).split('\0');
    rest = messages.pop() ?? '';
    for (const message of messages) {
      const answer = JSON.parse(message) as Answer;
      if (answer.id !== undefined) waiting.get(answer.id)?.(answer);
    }
  });
  let asked = 0;
  return {
    async ask(
      method: string,
      params: Readonly<Record<string, unknown>>,
      sessionId?: string,
    ): Promise<Readonly<Record<string, unknown>>> {
      asked += 1;
      const id = asked;
      const answered = new Promise<Answer>((resolve) => {
        waiting.set(id, resolve);
      });
      toBrowser.write(`${JSON.stringify({ id, method, params, sessionId })}\0`);
      const { result, error } = await answered;
      waiting.delete(id);
      if (error !== undefined) throw new Error(`${method}: ${error.message}`);
      return result ?? {};
    },
    async close(): Promise<void> {
      const ended = new Promise((resolve) => {
        running.once('exit', resolve);
      });
      await this.ask('Browser.close', {});
      await ended;
    },
  };
}

export type BareBrowser = ReturnType<typeof openBareBrowser>;

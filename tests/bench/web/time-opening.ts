import { setTimeout as pause } from 'node:timers/promises';
import type { BareBrowser } from './bare-browser.js';

/** Notes in the page when the first frame with the field is drawn. It is run in the page. */
function watchField(selector: string): void {
  const look = (): void => {
    if (document.querySelector(selector) === null) {
      requestAnimationFrame(look);
      return;
    }
    // A task after the frame: the field is on the screen.
    const channel = new MessageChannel();
    channel.port1.onmessage = () => {
      Object.assign(window, { usableAt: performance.now() });
    };
    channel.port2.postMessage(null);
  };
  requestAnimationFrame(look);
}

/**
 * Time from asking for a page in a new tab until a field of it is drawn, in milliseconds.
 *
 * @param slowed how many times slower the processor is made
 */
export async function timeOpening(
  browser: BareBrowser,
  url: string,
  selector: string,
  slowed: number,
): Promise<number> {
  const { targetId } = await browser.ask('Target.createTarget', { url: 'about:blank' });
  const { sessionId } = await browser.ask('Target.attachToTarget', { targetId, flatten: true });
  const ask = (method: string, params: Readonly<Record<string, unknown>>) =>
    browser.ask(method, params, String(sessionId));
  await ask('Emulation.setCPUThrottlingRate', { rate: slowed });
  await ask('Page.enable', {});
  await ask('Page.addScriptToEvaluateOnNewDocument', {
    source: `(${watchField.toString()})(${JSON.stringify(selector)})`,
  });
  await ask('Page.navigate', { url });
  for (;;) {
    await pause(500);
    const { result } = await ask('Runtime.evaluate', { expression: 'window.usableAt' });
    const { value } = result as { readonly value?: number };
    if (value === undefined) continue;
    await browser.ask('Target.closeTarget', { targetId });
    return value;
  }
}

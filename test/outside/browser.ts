import { existsSync } from 'node:fs';
import { type Browser, chromium } from 'playwright-core';

/** Where Debian's package puts the browser; another place may be named in the environment. */
const CHROMIUM = process.env.CHROMIUM ?? '/usr/bin/chromium';

/** Said by tests that are left out for want of a browser. */
export const noBrowser = existsSync(CHROMIUM) ? '' : `no browser at ${CHROMIUM}: left out`;

/** A real browser without a window, drawing in space by software, talking to nobody by itself. */
export function openBrowser(): Promise<Browser> {
  return chromium.launch({
    executablePath: CHROMIUM,
    args: [
      '--no-sandbox',
      '--use-angle=swiftshader',
      '--enable-unsafe-swiftshader',
      '--disable-quic',
      '--disable-background-networking',
      '--disable-component-update',
      '--disable-sync',
      '--no-first-run',
    ],
  });
}

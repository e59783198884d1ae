import { type Browser, chromium } from 'playwright-core';

/** Starts the browser without what a closed network would refuse it. */
export function launch(): Promise<Browser> {
  return chromium.launch({
    executablePath: process.env.PULLBOOK_CHROMIUM ?? '/usr/bin/chromium',
    args: [
      '--no-sandbox',
      '--disable-gpu',
      '--disable-quic',
      '--no-first-run',
      '--disable-background-networking',
      '--disable-component-update',
      '--disable-sync',
    ],
  });
}

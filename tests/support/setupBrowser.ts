/** One browser and one server of the built viewer for all files of a run; both end with it. */
import { chromium } from 'playwright-core';
import type { TestProject } from 'vitest/node';
import { buildCommandLine } from './build.ts';
import { FLAGS, browserPath } from './chromium.ts';
import { builtViewer, serve } from './served.ts';

declare module 'vitest' {
  export interface ProvidedContext {
    /** Where the browser waits for the tests. */
    readonly browser: string;
    /** The address of the viewer. */
    readonly viewer: string;
  }
}

export default async function setup({ provide }: TestProject): Promise<() => Promise<void>> {
  buildCommandLine();
  const server = await serve(builtViewer());
  const browser = await chromium.launchServer({ executablePath: browserPath(), args: [...FLAGS] });
  provide('browser', browser.wsEndpoint());
  provide('viewer', server.address);
  return async () => {
    await browser.close();
    await server.close();
  };
}

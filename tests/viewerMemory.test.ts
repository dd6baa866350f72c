/** What the page holds does not grow with what is done on it: bytes of the heap, with garbage collected. */
import type { CDPSession, Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { sharedVisit } from './support/browser.ts';

async function heldBy(session: CDPSession): Promise<number> {
  for (let k = 0; k < 3; k++) await session.send('HeapProfiler.collectGarbage');
  return (await session.send('Runtime.getHeapUsage')).usedSize;
}

/** As a person would: to the plan, a few names tried, and away. */
async function round(page: Page, k: number): Promise<void> {
  await page.getByRole('tab', { name: 'Plan', exact: true }).click();
  // The field may be folded away.
  await page
    .getByLabel('Name', { exact: true })
    .first()
    .evaluate(
      async (field: HTMLInputElement, names) => {
        for (const name of names) {
          field.focus();
          field.value = name;
          field.dispatchEvent(new Event('input', { bubbles: true }));
          await new Promise((done) => setTimeout(done, 20));
          field.dispatchEvent(new KeyboardEvent('keydown', { key: 'Enter', bubbles: true, cancelable: true }));
        }
        field.blur();
      },
      [`Pier run ${k}`, `Quay run ${k}`],
    );
  await page
    .locator('h1')
    .filter({ hasText: `Quay run ${k}` })
    .waitFor();
}

describe('the page', () => {
  const visit = sharedVisit({ map: false });

  it('lets go of what it showed before', async () => {
    const { page } = visit();
    const session = await page.context().newCDPSession(page);
    for (let k = 0; k < 4; k++) await round(page, k);
    const first = await heldBy(session);
    for (let k = 4; k < 16; k++) await round(page, k);
    // One rendering of the plan's fields is a megabyte: twelve were kept once.
    expect(((await heldBy(session)) - first) / 1e6).toBeLessThan(5);
  });
});

/// <reference lib="dom" />
import type { Page } from '@playwright/test';
import { examplePath, expect, test } from './bench-test.ts';

/** Our own rule: what is pressed with a thumb is so high, CSS pixels; WCAG 2.2, 2.5.8 asks for 24 (from memory). */
const high = 40;
/** And so wide: WCAG 2.2, success criterion 2.5.8 (from memory). */
const wide = 24;

/** What stands alone on the page and is too small for a thumb; folded parts unfolded. */
async function tooSmall(page: Page): Promise<readonly string[]> {
  return page.evaluate(
    ({ high, wide }) => {
      for (const folded of document.querySelectorAll('details')) folded.open = true;
      const pressed = 'button, a[href], input, select, textarea, summary';
      return [...document.querySelectorAll<HTMLElement>(pressed)].flatMap((one) => {
        // a box to tick is pressed by its words
        const box = (one.closest('label') ?? one).getBoundingClientRect();
        // a link in a sentence is as high as its line: excepted there, too
        const isInSentence =
          getComputedStyle(one).display === 'inline' &&
          [...(one.parentElement?.childNodes ?? [])].some(
            (beside) =>
              beside !== one && beside.nodeType === Node.TEXT_NODE && beside.textContent?.trim() !== '',
          );
        // what is on no screen until it has the focus
        const isHidden =
          !one.checkVisibility({ visibilityProperty: true }) || box.width < 2 || box.bottom < 0;
        // half a pixel of a line height in fractions
        if (isHidden || isInSentence || (box.height > high - 0.5 && box.width > wide - 0.5)) return [];
        const { width, height } = box;
        const words = (one.textContent || one.getAttribute('aria-label') || one.id).trim().slice(0, 40);
        return [`${one.localName}.${one.className} ${words}: ${width.toFixed(0)} by ${height.toFixed(0)}`];
      });
    },
    { high, wide },
  );
}

/** Where the links of a page lead, each kind of page once; of launches the example's. */
async function linked(page: Page): Promise<readonly string[]> {
  const paths = await page.evaluate(() =>
    [...document.querySelectorAll('a[href^="/"]')].map(
      (link) => new URL((link as HTMLAnchorElement).href).pathname,
    ),
  );
  return paths.filter((path) => !path.startsWith('/launch/') || path.startsWith(examplePath));
}

const kindOf = (path: string): string =>
  path.replace(/^(\/gauge\/[a-z-]+)\/.*/u, '$1').replace(/^\/drawer\/[0-9a-f-]{36}/u, '/drawer/part');

test('on a phone whatever is pressed is high enough for a thumb, on every page that a link leads to', async ({
  opened: page,
  station,
}) => {
  test.setTimeout(600_000);
  await page.setViewportSize({ width: 360, height: 740 });
  const found: Record<string, readonly string[]> = {};
  const known = new Set<string>(['/']);
  // a laser of the drawer, unfolded, leads to its versions
  const ahead = ['/', '/drawer#e8a3b1e0-0000-4000-8000-000000000002'];
  for (let path = ahead.shift(); path !== undefined; path = ahead.shift()) {
    await page.goto(`${station.address}${path}`);
    await expect(page.getByRole('heading', { level: 1 })).toBeVisible();
    await expect(page.getByText(/^(?:Opening|Asking the station) …$/u)).toHaveCount(0);
    if (path === examplePath)
      await expect(page.getByText('nine times in ten')).toBeVisible({ timeout: 60_000 });
    const small = await tooSmall(page);
    if (small.length > 0) found[path] = small;
    for (const next of await linked(page)) {
      if (known.has(kindOf(next))) continue;
      known.add(kindOf(next));
      ahead.push(next);
    }
  }
  // 24 gauges and the pages of the frame, of a launch and of a part
  expect(known.size).toBeGreaterThan(35);
  expect(found).toEqual({});
});

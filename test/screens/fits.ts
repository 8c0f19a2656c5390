/// <reference lib="dom" />
import { expect, type Page } from '@playwright/test';

/** Fails if one has to scroll sideways. @param where what is looked at, for the message */
export async function expectNoWider(page: Page, where: string): Promise<void> {
  const over = () => page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
  // pictures that measure their room follow a moment later
  await expect.poll(over, { message: where }).toBeLessThanOrEqual(0);
}

/** Looks at a page as a laptop, a tablet and a phone show it: none is wider than the screen, and what is pressed is large enough. */
export async function expectFits(page: Page, where: string): Promise<void> {
  for (const width of [1280, 768, 360]) {
    const at = `${where} at ${width} px`;
    await page.setViewportSize({ width, height: 740 });
    await expectNoWider(page, at);
    // WCAG 2.2, success criterion 2.5.8 (from memory): 24 px either way, text links excepted; a box to tick is pressed by its words
    const small = await page.evaluate(() =>
      [...document.querySelectorAll('button, select, input:not([type="checkbox"], [type="radio"])')]
        .map((one) => ({ box: one.getBoundingClientRect(), text: one.textContent || one.ariaLabel }))
        .filter(({ box }) => box.width > 0 && (box.width < 24 || box.height < 24))
        .map(({ text }) => text),
    );
    expect(small, at).toEqual([]);
  }
}

/// <reference lib="dom" />
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Page } from '@playwright/test';

/** Evaluated in the page by the test's own channel: the page's policy lets no script in. */
const source = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

interface Violation {
  readonly id: string;
  readonly nodes: readonly { readonly html: string; readonly failureSummary: string }[];
}

/**
 * What axe finds to complain about on a page as it is, folded parts unfolded; empty: nothing.
 *
 * @param only rules to be asked alone; left out: all
 */
export async function complaints(page: Page, only?: readonly string[]): Promise<readonly string[]> {
  await page.evaluate(source);
  return page.evaluate(async (rules) => {
    for (const folded of document.querySelectorAll('details')) folded.open = true;
    // biome-ignore lint/suspicious/noExplicitAny: axe puts itself on the window
    const found = await (window as any).axe.run(rules === null ? {} : { runOnly: rules });
    return (found.violations as readonly Violation[]).flatMap(({ id, nodes }) =>
      nodes.slice(0, 3).map(({ html, failureSummary }) => `${id}: ${html.slice(0, 200)} ${failureSummary}`),
    );
  }, only ?? null);
}

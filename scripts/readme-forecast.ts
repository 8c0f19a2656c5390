// The README shows the least launch that forecasts, and part of what comes of it: both are put in from the real thing.
import { readFileSync } from 'node:fs';
import { fakeShell } from '../packages/cli/src/fake-shell.ts';
import { run } from '../packages/cli/src/run.ts';
import { between } from './between-marks.ts';

const example = new URL('../examples/five-lines.launch.yaml', import.meta.url);

/** The sections that are shown, by the beginning of their heading. */
const shown = ['unnamed launch', 'At the facet', 'Ledger', 'What to measure next'];

/** A README with what stands between its marks replaced by what is true now. */
export async function withForecast(readme: string): Promise<string> {
  const launch = readFileSync(example, 'utf8');
  const shell = fakeShell({ 'five-lines.launch.yaml': launch });
  await run(['forecast', 'five-lines.launch.yaml'], shell);
  const sections = shell.printed().trimEnd().split('\n\n');
  const parts: string[] = [];
  for (const section of sections) {
    if (shown.some((heading) => section.startsWith(heading))) parts.push(section);
    else if (parts.length > 0 && parts.at(-1) !== '[…]') parts.push('[…]');
  }
  const withLaunch = between(readme, 'five lines', `\`\`\`yaml\n${launch.trimEnd()}\n\`\`\``);
  return between(withLaunch, 'forecast', `\`\`\`text\n${parts.join('\n\n')}\n\`\`\``);
}

// Writes what follows from elsewhere: the examples' text into bench, the key tables into docs, a forecast into the
// README. `npm run documents`.
import { readFileSync, writeFileSync } from 'node:fs';
import { drawerKeyTables, launchKeyTables } from '../packages/bench/src/index.ts';
import { between } from './between-marks.ts';
import { gaugesPart } from './gauges-page.ts';
import { withPublishedLaunches } from './published/published-page.ts';
import { withForecast } from './readme-forecast.ts';

const head =
  '// Written by scripts/write-documents.ts from examples/: change the example there, not here.\n\n';

/** A text as a template literal. */
function literal(text: string): string {
  return `\`${text.replaceAll('\\', '\\\\').replaceAll('`', '\\`').replaceAll('${', '\\${')}\``;
}

const examples = [
  [
    'observing-loft.launch.yaml',
    'observingLoftLaunch',
    'A complete launch of our own invention: green light for an observing loft.',
  ],
  ['observing-loft.drawer.yaml', 'observingLoftDrawer', 'The drawer beside that bench.'],
  ['five-lines.launch.yaml', 'fiveLinesLaunch', 'The least that forecasts.'],
] as const;

const constants = examples.map(([file, name, about]) => {
  const text = readFileSync(`examples/${file}`, 'utf8');
  return `/** ${about} The text of \`examples/${file}\`. */\nexport const ${name} = ${literal(text)};\n`;
});
writeFileSync('packages/bench/src/example/example-texts.ts', head + constants.join('\n'));

for (const [file, tables] of [
  ['docs/launch-document.md', launchKeyTables()],
  ['docs/drawer-document.md', drawerKeyTables()],
] as const) {
  writeFileSync(file, between(readFileSync(file, 'utf8'), 'keys', tables));
}

const gaugesPage = 'docs/gauges.md';
writeFileSync(gaugesPage, between(readFileSync(gaugesPage, 'utf8'), 'gauges', gaugesPart()));

const published = 'docs/published-launches.md';
writeFileSync(published, withPublishedLaunches(readFileSync(published, 'utf8')));
writeFileSync('README.md', await withForecast(readFileSync('README.md', 'utf8')));

import { exampleHeading, gauges, howTos, keysFilledBy, leadsElsewhere } from '../packages/bench/src/index.ts';

/** The part of docs/gauges.md that follows from the table of gauges and their how-tos. */
export function gaugesPart(): string {
  return gauges.map(({ name }) => sectionFor(name).trim()).join('\n\n');
}

function sectionFor(name: string): string {
  const gauge = gauges.find((one) => one.name === name)!;
  const { steps, cautions, example } = howTos.find((one) => one.gauge === name)!;
  const lines = [
    `### ${name}`,
    '',
    ...wrapped(`Answers: ${gauge.answers}. Needs: ${gauge.needs}.`, '', ''),
    '',
    ...steps.flatMap((step, i) => wrapped(step, `${i + 1}. `, '   ')),
    '',
    ...cautions.flatMap((caution) => ['>', ...wrapped(`Caution: ${caution}`, '> ', '> ')]).slice(1),
    '',
    `| ${gauge.columns.length === 0 ? 'setting' : 'column or setting'} | | what it is |`,
    '|---|---|---|',
    ...gauge.columns.map((column) => row(exampleHeading(column), column.needed, column.what)),
    ...gauge.settings.map((setting) => row(`# ${setting.name}`, setting.needed, setting.what)),
    '',
    ...wrapped(leadsTo(name), '', ''),
    '',
    ...(example === null ? [] : ['```', example.trimEnd(), '```', '']),
  ];
  return lines.join('\n');
}

/** Where its answers go. */
function leadsTo(name: string): string {
  const keys = [...new Set(keysFilledBy(name))].map((key) => `\`${key}\``);
  const elsewhere = leadsElsewhere(name)?.words ?? '';
  return `${keys.length === 0 ? '' : `Fills: ${keys.join(', ')}.`} ${elsewhere}`.trim();
}

const row = (name: string, needed: boolean, what: string): string =>
  `| \`${name}\` | ${needed ? 'needed' : ''} | ${what} |`;

/** Words in lines of at most 120 characters, the first behind `first`, the others behind `others`. */
function wrapped(text: string, first: string, others: string): readonly string[] {
  const lines: string[] = [];
  let line = first;
  for (const word of text.split(' ')) {
    const isEmpty = line === first || line === others;
    if (!isEmpty && `${line} ${word}`.length > 120) {
      lines.push(line);
      line = `${others}${word}`;
    } else line += isEmpty ? word : ` ${word}`;
  }
  return [...lines, line];
}

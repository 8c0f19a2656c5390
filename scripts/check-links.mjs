// Every relative link in a tracked Markdown file must lead to a file, and every #fragment to a heading.
import { execFileSync } from 'node:child_process';
import { existsSync, readFileSync, statSync } from 'node:fs';
import { dirname, join, normalize } from 'node:path';

const listed = execFileSync('git', ['ls-files', '--cached', '--others', '--exclude-standard', '*.md'], {
  encoding: 'utf8',
});
const files = listed.split('\n').filter((file) => file !== '' && existsSync(file));

const slug = (heading) =>
  heading
    .toLowerCase()
    .replace(/[^\p{Letter}\p{Number}\s_-]/gu, '')
    .trim()
    .replace(/\s/g, '-');
const headings = (file) =>
  new Set(
    readFileSync(file, 'utf8')
      .split('\n')
      .filter((line) => /^#{1,6} /.test(line))
      .map((line) => slug(line.replace(/^#+ /, '').replace(/`/g, ''))),
  );

let links = 0;
const broken = [];
for (const file of files) {
  const text = readFileSync(file, 'utf8').replace(/```[\s\S]*?```/g, '');
  for (const [, target] of text.matchAll(/\]\(([^)\s]+)\)/g)) {
    if (/^[a-z]+:/i.test(target)) continue;
    links += 1;
    const [path, fragment] = target.split('#');
    const to = path === '' ? file : normalize(join(dirname(file), decodeURIComponent(path)));
    if (!existsSync(to)) broken.push(`${file}: no such file: ${target}`);
    else if (fragment !== undefined && statSync(to).isFile() && !headings(to).has(fragment)) {
      broken.push(`${file}: no such heading: ${target}`);
    }
  }
}
for (const line of broken) console.error(line);
console.log(`${links} links in ${files.length} documents, ${broken.length} broken`);
process.exit(broken.length === 0 ? 0 : 1);

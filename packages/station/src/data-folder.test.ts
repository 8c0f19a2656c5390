import { expect, test } from 'vitest';
import { dataFolder } from './data-folder.ts';

// XDG Base Directory Specification 0.8, section 3 (from memory); the other two are common practice, no source
const folders = [
  ['linux', {}, '/home/ada/.local/share/coreward'],
  ['linux', { XDG_DATA_HOME: '/data/ada' }, '/data/ada/coreward'],
  ['linux', { XDG_DATA_HOME: '' }, '/home/ada/.local/share/coreward'],
  ['linux', { XDG_DATA_HOME: 'relative' }, '/home/ada/.local/share/coreward'],
  ['freebsd', {}, '/home/ada/.local/share/coreward'],
  ['darwin', { XDG_DATA_HOME: '/data/ada' }, '/home/ada/Library/Application Support/Coreward'],
] as const;

for (const [platform, env, folder] of folders) {
  test(`on ${platform} with ${JSON.stringify(env)} the bench book lies in ${folder}`, () => {
    expect(dataFolder({ platform, env, home: '/home/ada' })).toBe(folder);
  });
}

test('on Windows it lies in the local part of the user’s own data', () => {
  const home = 'C:\\Users\\ada';
  const local = 'D:\\Local';
  expect(dataFolder({ platform: 'win32', env: {}, home })).toBe('C:\\Users\\ada\\AppData\\Local\\Coreward');
  expect(dataFolder({ platform: 'win32', env: { LOCALAPPDATA: local }, home })).toBe('D:\\Local\\Coreward');
});

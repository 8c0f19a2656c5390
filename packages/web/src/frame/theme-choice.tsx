import type { Settings } from '@coreward/contract';
import { type JSX, useEffect } from 'react';
import { contentOf } from '../keeping/state.ts';
import { useKeeping, useKept } from '../keeping/use-keeping.ts';
import { frameTexts } from '../texts/frame.ts';

const themes = ['dark', 'light', 'system'] as const satisfies readonly Settings['theme'][];
const rememberedKey = 'coreward.theme';

/** The settings as this page has them. */
export function useSettings(): Settings {
  const state = useKept();
  const content = contentOf(state, { kind: 'settings' });
  return content?.kind === 'settings' ? content.settings : state.settings.settings;
}

/** Puts the chosen theme on the page, and remembers it so that the next load begins with it. */
export function useTheme(): void {
  const { loaded } = useKept();
  const { theme } = useSettings();
  const { storage } = useKeeping().world;
  useEffect(() => {
    if (!loaded) return;
    showTheme(theme);
    try {
      storage.setItem(rememberedKey, theme);
    } catch {
      // then the next page begins dark
    }
    if (theme !== 'system') return;
    const light = window.matchMedia('(prefers-color-scheme: light)');
    const follow = (): void => showTheme('system');
    light.addEventListener('change', follow);
    return () => light.removeEventListener('change', follow);
  }, [theme, loaded, storage]);
}

/** The theme of the last visit, before the station has said anything. */
export function showRememberedTheme(remembered: string | null): void {
  showTheme(themes.find((theme) => theme === remembered) ?? 'dark');
}

export const rememberedTheme = (getItem: (key: string) => string | null): string | null =>
  getItem(rememberedKey);

function showTheme(theme: Settings['theme']): void {
  const isLight =
    theme === 'light' || (theme === 'system' && window.matchMedia('(prefers-color-scheme: light)').matches);
  document.documentElement.dataset.theme = isLight ? 'light' : 'dark';
}

export function ThemeChoice(): JSX.Element {
  const keeping = useKeeping();
  const settings = useSettings();
  const { loaded } = useKept();
  const words = frameTexts.theme;
  const choose = (theme: Settings['theme']): void =>
    keeping.changeSettings({ theme }, words.what[theme], window.location.pathname);
  return (
    // before the settings are here a choice would be made against older ones, and be turned away
    <fieldset className="theme-choice" disabled={!loaded}>
      <legend>{words.legend}</legend>
      {themes.map((theme) => (
        <label key={theme}>
          <input
            type="radio"
            name="theme"
            checked={settings.theme === theme}
            onChange={() => choose(theme)}
          />
          {words[theme]}
        </label>
      ))}
    </fieldset>
  );
}

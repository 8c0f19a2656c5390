import { createRoot } from 'react-dom/client';
import { App } from './frame/app.tsx';
import { browserWorld } from './frame/browser-world.ts';
import { rememberedTheme, showRememberedTheme } from './frame/theme-choice.tsx';
import { createKeeping } from './keeping/keeping.ts';
import { KeepingContext } from './keeping/use-keeping.ts';
import './theme/tokens.css';
import './frame/base.css';
import './frame/print.css';

const root = document.getElementById('root');
if (root === null) throw new Error('index.html has no #root');

const world = browserWorld(window);
showRememberedTheme(rememberedTheme(world.storage.getItem));
const keeping = createKeeping(world);
keeping.join();

// the moment at which a lost station is most likely back, or somebody looks
for (const event of ['online', 'focus', 'pageshow']) {
  window.addEventListener(event, () => {
    if (keeping.get().connection === 'lost') keeping.join();
  });
}
window.addEventListener('beforeunload', (event) => {
  const { unkept, remembered } = keeping.get();
  if (unkept.length > 0 && !remembered) event.preventDefault();
});

createRoot(root).render(
  <KeepingContext value={keeping}>
    <App />
  </KeepingContext>,
);

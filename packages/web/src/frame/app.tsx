import { observingLoftLaunch } from '@coreward/bench';
import { type JSX, lazy, Suspense, useState } from 'react';
import { frameTexts } from '../texts/frame.ts';

const LaunchPage = lazy(async () => ({ default: (await import('../launch/launch-page.tsx')).LaunchPage }));

/** The frame around every page. */
export function App(): JSX.Element {
  const [text, setText] = useState<string>(observingLoftLaunch);
  return (
    <main>
      <Suspense fallback={<p>{frameTexts.opening}</p>}>
        <LaunchPage text={text} onChange={setText} invented={true} parts={[]} />
      </Suspense>
    </main>
  );
}

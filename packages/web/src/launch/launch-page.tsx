import { forecast, forecastSections, Refusal, readLaunch } from '@coreward/bench';
import { type JSX, useMemo } from 'react';

/** What the frame hands to the launch page. */
export interface LaunchPageProps {
  /** The launch document as kept in the bench book. */
  readonly text: string;
  /** A finished change: the new document and what was done, in words, for undo. Not called while dragging. */
  readonly onChange: (text: string, what: string) => void;
  /** Marks our own invented example. */
  readonly invented: boolean;
  /** The drawer's parts that could be swapped in, as the drawer page keeps them. */
  readonly parts: readonly { readonly kind: string; readonly name: string; readonly text: string }[];
}

/** One launch: its light, its parts, its ledger and what to expect of it. */
export function LaunchPage({ text }: LaunchPageProps): JSX.Element {
  const sections = useMemo(() => told(text), [text]);
  return (
    <main>
      {sections.map(({ heading, lines }) => (
        <section key={heading}>
          <h2>{heading}</h2>
          {lines.map((line) => (
            <p key={line}>{line}</p>
          ))}
        </section>
      ))}
    </main>
  );
}

function told(text: string): readonly { readonly heading: string; readonly lines: readonly string[] }[] {
  try {
    return forecastSections(forecast(readLaunch(text, 'launch'))).map(({ heading, blocks }) => ({
      heading,
      lines: blocks.flatMap((block) => (block.kind === 'text' ? [block.text] : [])),
    }));
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    return error.parts.map(({ where, what, mend }) => ({ heading: where, lines: [what, mend] }));
  }
}

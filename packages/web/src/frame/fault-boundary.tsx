import { Component, type ReactNode } from 'react';
import { frameTexts } from '../texts/frame.ts';

/** Catches a fault of ours on one page or a part of it, says so, and leaves the rest standing. */
export class FaultBoundary extends Component<
  {
    readonly children: ReactNode;
    /** One line in place of a part of a page; left out: a page broke. */
    readonly line?: string;
  },
  { readonly fault: string | null }
> {
  override state: { readonly fault: string | null } = { fault: null };

  static getDerivedStateFromError(error: unknown): { readonly fault: string } {
    return { fault: error instanceof Error ? error.message : String(error) };
  }

  override render(): ReactNode {
    if (this.state.fault === null) return this.props.children;
    if (this.props.line !== undefined) return <p role="alert">{this.props.line}</p>;
    const { title, text, reload } = frameTexts.fault;
    return (
      <div role="alert">
        <h1>{title}</h1>
        <p>{text}</p>
        <p>
          <code>{this.state.fault}</code>
        </p>
        <button type="button" onClick={() => window.location.reload()}>
          {reload}
        </button>
      </div>
    );
  }
}

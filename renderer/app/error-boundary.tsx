// When a screen breaks, the others stay: says so, and offers to try again.
import { Component, type ReactNode } from 'react';

interface Props {
  readonly children: ReactNode;
}

export class ErrorBoundary extends Component<Props, { readonly problem: string | null }> {
  override state = { problem: null };

  static getDerivedStateFromError(error: unknown): { problem: string } {
    return { problem: error instanceof Error ? error.message : String(error) };
  }

  override render(): ReactNode {
    if (this.state.problem === null) return this.props.children;
    return (
      <div className="page stack" role="alert">
        <h1>This screen stopped</h1>
        <p>
          Nothing that was recorded is lost. The other screens still work, and you can try this one again.
        </p>
        <p className="soft small">What the program says: {this.state.problem}</p>
        <div>
          <button className="button primary" type="button" onClick={() => this.setState({ problem: null })}>
            Try again
          </button>
        </div>
      </div>
    );
  }
}

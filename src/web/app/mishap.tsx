import { Component, type ReactNode } from 'react';

interface MishapProps {
  children: ReactNode;
}

/**
 * Where a sheet cannot be drawn, says so in its place; the rail, undo and the saving go on working around it.
 * A new `key` (another step) begins afresh.
 */
export class Mishap extends Component<MishapProps, { reason: string | undefined }> {
  override state = { reason: undefined };

  static getDerivedStateFromError(error: unknown) {
    return { reason: error instanceof Error ? error.message : String(error) };
  }

  override render(): ReactNode {
    const { reason } = this.state;
    if (reason === undefined) return this.props.children;
    return (
      <div role="alert">
        <h2>This sheet cannot be drawn</h2>
        <p>
          Nothing you have entered is lost. Undo the last change, or load the page again. If it stays so, save
          the build as a file from the shelf and send it with these words: “{reason}”.
        </p>
        <button type="button" className="button" onClick={() => this.setState({ reason: undefined })}>
          Try again
        </button>
      </div>
    );
  }
}

import { Component, type ReactNode } from 'react';
import { writeGraph } from '../../runtime/index.ts';
import { present } from '../state/editor.ts';

interface RoomBoundaryProps {
  /** What stopped, as it begins a sentence: "The sheet". */
  readonly name: string;
  readonly children: ReactNode;
}

/** Keeps the fault of one part of the page from taking the others, and the document, with it. */
export class RoomBoundary extends Component<RoomBoundaryProps, { readonly fault: string | undefined }> {
  override readonly state = { fault: undefined };

  static getDerivedStateFromError(error: unknown) {
    return { fault: error instanceof Error ? error.message : String(error) };
  }

  override render(): ReactNode {
    const { fault } = this.state;
    return fault === undefined ? this.props.children : <Stopped name={this.props.name} fault={fault} onAgain={() => this.setState({ fault: undefined })} />;
  }
}

function Stopped({ name, fault, onAgain }: { readonly name: string; readonly fault: string; readonly onAgain: () => void }) {
  return (
    <div className="app-stopped" role="alert">
      <p><strong>{name} stopped working: {fault}</strong></p>
      <p>The document is untouched. Try again; if it stops once more, take a copy of the document and load the page anew.</p>
      <p className="button-row">
        <button type="button" className="button" onClick={onAgain}>Try again</button>
        <button type="button" className="button" onClick={takeCopy}>Take a copy of the document</button>
      </p>
    </div>
  );
}

/** Hands the document over as a file without any of the rooms. */
function takeCopy(): void {
  const address = URL.createObjectURL(new Blob([writeGraph(present())], { type: 'application/json' }));
  const link = Object.assign(document.createElement('a'), { href: address, download: 'copy.json' });
  link.click();
  URL.revokeObjectURL(address);
}

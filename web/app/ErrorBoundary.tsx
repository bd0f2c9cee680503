import { Component, type ComponentChildren } from "preact";

interface Props {
  readonly screen: string;
  readonly children: ComponentChildren;
}

/** A screen that can not be drawn says so and leaves the rest of the page usable. */
export class ErrorBoundary extends Component<Props, { readonly why: string | null }> {
  override state: { readonly why: string | null } = { why: null };

  static override getDerivedStateFromError(thrown: unknown) {
    return { why: thrown instanceof Error ? thrown.message : String(thrown) };
  }

  override render({ screen, children }: Props) {
    if (this.state.why === null) return children;
    return (
      <div class="screen">
        <p class="answer answer-problem" role="alert">
          The screen {screen} could not be drawn: {this.state.why}.
        </p>
        <p>Everything saved is kept. If it happens again after a reload, please report what you did before.</p>
        <button type="button" class="primary" onClick={() => location.reload()}>
          Reload the page
        </button>
      </div>
    );
  }
}

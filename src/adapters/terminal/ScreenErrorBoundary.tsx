import { Component, type ReactNode } from 'react';

export interface ScreenErrorBoundaryProps {
  readonly children: ReactNode;
  /** Told once; leaves the screen. */
  readonly onError: (error: Error) => void;
}

/** A drawing error leaves the screen with the error instead of a half-drawn window. */
export class ScreenErrorBoundary extends Component<ScreenErrorBoundaryProps, { readonly failed: boolean }> {
  override readonly state = { failed: false };

  static getDerivedStateFromError(): { readonly failed: boolean } {
    return { failed: true };
  }

  override componentDidCatch(error: Error): void {
    this.props.onError(error);
  }

  override render(): ReactNode {
    return this.state.failed ? null : this.props.children;
  }
}

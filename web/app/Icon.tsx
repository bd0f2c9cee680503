export interface IconProps {
  /** Path data of a 24 by 24 line drawing. */
  readonly path: string;
  readonly size?: number;
}

export const CROSS = "M5 5l14 14M19 5 5 19";

/** A line drawing beside words or a label; says nothing to a screen reader itself. */
export function Icon({ path, size = 20 }: IconProps) {
  return (
    <svg viewBox="0 0 24 24" width={size} height={size} aria-hidden="true">
      <path d={path} />
    </svg>
  );
}

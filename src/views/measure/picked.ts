/** The row or column whose head was tapped. */
export type Picked =
  | { readonly kind: 'depth'; readonly row: number }
  | { readonly kind: 'clock'; readonly column: number };

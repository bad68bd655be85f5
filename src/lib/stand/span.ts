/** A number that is known (`least` and `most` are the same) or lies between two. */
export interface Span {
  readonly least: number;
  readonly most: number;
}
